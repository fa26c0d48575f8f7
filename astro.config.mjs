import mdx from '@astrojs/mdx';
import { defineConfig } from 'astro/config';
import { benchBook } from './src/build/integration.ts';

// Pages are written with links from the root; the build makes them relative, so one build serves under any base path.
export default defineConfig({
  outDir: './dist/site',
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'never', assets: 'assets' },
  compressHTML: true,
  devToolbar: { enabled: false },
  integrations: [mdx(), benchBook()],
});
