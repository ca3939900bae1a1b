import { defineConfig } from 'vite'

const server = process.env.SETWRIGHT_SERVER ?? 'http://127.0.0.1:4870'

export default defineConfig({
  root: 'web',
  base: '/',
  build: { outDir: '../dist/web', emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
  worker: { format: 'es' },
  server: { host: '127.0.0.1', proxy: { '/api': server } },
})
