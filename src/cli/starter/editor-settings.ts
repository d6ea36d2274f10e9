/** Settings by which an editor completes and checks entries while they are typed. */
import { entrySchemaFiles } from '../../../schemas/json-schemas.ts';
import { type Kind, markdownKinds } from '../../../schemas/kinds.ts';

/** Which YAML files each kind of entry is in, as seen from the repository. */
function patternOf(kind: Kind): string {
  if (kind === 'site') return 'content/site.yaml';
  if (kind === 'outputs') return 'content/outputs/*/session.yaml';
  return `content/${kind}/**/*.yaml`;
}

const yamlKinds = (Object.keys(entrySchemaFiles) as Kind[]).filter((kind) => !markdownKinds.includes(kind));

/** Where a shop’s repository keeps its copies of the schemas: found before the program is installed there. */
const copies = '.vscode/schemas';

/** The schemas that are copied into a shop’s repository: the name of each and its path there. */
export const editorSchemas = yamlKinds.map((kind) => ({
  file: entrySchemaFiles[kind],
  path: `${copies}/${entrySchemaFiles[kind]}`,
}));

/**
 * The text of .vscode/settings.json: YAML language servers take paths from the folder that is opened.
 * @param folder where the schemas are, as seen from there: by default a shop’s copies.
 */
export function editorSettings(folder: string = copies): string {
  const schemas = yamlKinds.map(
    (kind) => [`./${folder}/${entrySchemaFiles[kind]}`, patternOf(kind)] as const,
  );
  const settings = {
    'yaml.schemas': Object.fromEntries(schemas),
    'files.insertFinalNewline': true,
    ...(folder === copies && { 'files.exclude': { '.readback': true } }),
  };
  return `${JSON.stringify(settings, undefined, 2)}\n`;
}
