/** The code field for other sites, as one plain script. */
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { embedScriptPath } from '../views/paths.ts';
import type { Language } from '../words/index.ts';
import { interfaceLanguage } from './interface-language.ts';
import { projectRoot } from './project.ts';

/**
 * The script of `<readback-code-field>`: one file that leaves nothing behind in the page but the element.
 * @throws the error of Vite.
 */
export async function embedScript(language: Language): Promise<string> {
  const { build } = await import('vite');
  const built = await build({
    configFile: false,
    root: projectRoot,
    publicDir: false,
    logLevel: 'error',
    plugins: [interfaceLanguage(language)],
    build: {
      write: false,
      target: 'es2022',
      rolldownOptions: {
        input: join(projectRoot, 'src/client/embed/code-field.ts'),
        output: { format: 'iife' },
        // Loading a module of the pure rooms does nothing: see astro.config.mjs.
        treeshake: {
          moduleSideEffects: [
            { test: /\/(?:schemas|src\/(?:words|measure|codes|views))\//, sideEffects: false },
          ],
        },
      },
    },
  });
  const outputs = (Array.isArray(built) ? built : [built]).flatMap((one) =>
    'output' in one ? one.output : [],
  );
  const [chunk, ...others] = outputs.flatMap((one) => (one.type === 'chunk' ? [one] : []));
  if (!chunk || others.length > 0)
    throw new Error('The code field for other sites did not come out as one file.');
  return chunk.code;
}

/** Puts the script at its address in a finished site. */
export async function writeEmbedScript(folder: string, language: Language): Promise<void> {
  const file = join(folder, embedScriptPath);
  await mkdir(dirname(file), { recursive: true });
  await writeFile(file, await embedScript(language));
}
