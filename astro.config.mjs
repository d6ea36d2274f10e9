import { defineConfig } from 'astro/config';

// Loading a module of the pure rooms does nothing: what a page does not use of them is not sent to it.
const treeshake = {
  moduleSideEffects: [
    { test: /\/(?:schemas|src\/(?:words|measure|codes|tables|decide|plot|walk))\//, sideEffects: false },
  ],
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
    build: { rolldownOptions: { treeshake } },
    worker: { rolldownOptions: { treeshake } },
  },
});
