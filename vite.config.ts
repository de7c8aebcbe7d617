/** How the screens of src/web/ become files a browser loads. `scripts/build-web.mjs` runs it and says where they go. */
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'
import solid from 'vite-plugin-solid'

export default defineConfig({
  root: fileURLToPath(new URL('src/web', import.meta.url)),
  base: '/',
  publicDir: false,
  logLevel: 'error',
  clearScreen: false,
  plugins: [solid()],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    // the content security policy lets in no data: fonts and no inline script
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 2000,
    reportCompressedSize: false,
  },
})
