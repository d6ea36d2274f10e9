import { defineConfig } from 'astro/config';

// Loading a module of the pure rooms does nothing: what a page does not use of them is not sent to it.
const treeshake = {
  moduleSideEffects: [
    { test: /\/(?:schemas|src\/(?:words|measure|codes|tables|decide|plot|walk))\//, sideEffects: false },
  ],
};

// What a script loads later needs nothing fetched ahead of it: styles stand in the page, and what it shares is there.
const plainImports = {
  name: 'plain-imports',
  enforce: 'pre',
  configEnvironment: () => ({ build: { modulePreload: { resolveDependencies: () => [] } } }),
  load: {
    filter: { id: /vite\/preload-helper/ },
    handler: () => 'export const __vitePreload = (load) => load();',
  },
};

// A few lines several pages’ scripts need are one file: each file more costs a request and what gzip learns anew.
const inCommon = {
  name: 'common',
  test: /\/src\/(?:client\/(?:find|make|code-text|fetch-json|pause)|views\/(?:code-runs|paths)|codes\/canonical-code)\.ts$|vite\/preload-helper/,
};

// Output folder and base path come from the command that publishes; see src/publish/.
export default defineConfig({
  output: 'static',
  trailingSlash: 'always',
  build: {
    format: 'directory',
    assets: 'assets',
    // One request a page: on a bad signal a second round trip costs more than a few kilobytes.
    inlineStylesheets: 'always',
  },
  devToolbar: { enabled: false },
  vite: {
    plugins: [plainImports],
    build: {
      rolldownOptions: { treeshake, output: { codeSplitting: { groups: [inCommon] } } },
    },
    worker: { rolldownOptions: { treeshake } },
  },
});
