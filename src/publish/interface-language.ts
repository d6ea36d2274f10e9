/** Gives the scripts of pages the texts of a language when they are bundled, so that no list is sent with them. */
import type { AstroInlineConfig } from 'astro';
import type { Plugin } from 'vite';
import type { Language } from '../words/index.ts';
import { replacePhrases } from '../words/source-texts.ts';

type ViteSettings = NonNullable<AstroInlineConfig['vite']>;

/** For bundles of browsers alone: on the server a text is looked up when it is said. */
export function interfaceLanguage({ texts }: Language): Plugin {
  return {
    name: 'interface-language',
    enforce: 'pre',
    applyToEnvironment: ({ name }) => name === 'client',
    transform: (code, id) =>
      /\/(?:src|schemas)\/.*\.ts$/.test(id) && /hrase(?:<string>)?\(/.test(code)
        ? { code: replacePhrases(code, texts), map: null }
        : undefined,
  };
}

/** Vite’s settings for a site in a language, workers of its pages included. */
export function speaking(language: Language): ViteSettings {
  return {
    plugins: [interfaceLanguage(language)],
    worker: { plugins: () => [interfaceLanguage(language)] },
  };
}
