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

/**
 * The schemas that are copied into the repository, so that they are found before the program is installed there:
 * the name of each, its path in the repository, and the entries it is for.
 */
export const editorSchemas = yamlKinds.map((kind) => ({
  file: entrySchemaFiles[kind],
  path: `.vscode/schemas/${entrySchemaFiles[kind]}`,
  pattern: patternOf(kind),
}));

/** The text of .vscode/settings.json: YAML language servers take paths from the folder that is opened. */
export function editorSettings(): string {
  const settings = {
    'yaml.schemas': Object.fromEntries(editorSchemas.map(({ path, pattern }) => [`./${path}`, pattern])),
    'files.insertFinalNewline': true,
    'files.exclude': { '.readback': true },
  };
  return `${JSON.stringify(settings, undefined, 2)}\n`;
}
