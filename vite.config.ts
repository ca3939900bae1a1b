import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { defineConfig, type Plugin } from 'vite'

const server = process.env.SETWRIGHT_SERVER ?? 'http://127.0.0.1:4870'
const at = (path: string) => fileURLToPath(new URL(path, import.meta.url))

/** Writes into the built service worker which files it keeps, and a mark that changes with any of them. */
function keptFiles(): Plugin {
  return {
    name: 'kept-files',
    apply: 'build',
    writeBundle({ dir }) {
      const worker = join(dir!, 'sw.js')
      const files = readdirSync(dir!, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name !== 'sw.js')
        .map((entry) => join(entry.parentPath, entry.name))
        .sort()
      const mark = createHash('sha256')
      for (const file of [worker, ...files]) mark.update(readFileSync(file))
      const kept = {
        version: mark.digest('hex').slice(0, 12),
        files: files.map((file) => file.slice(dir!.length).replaceAll(sep, '/')),
      }
      writeFileSync(worker, `const KEPT=${JSON.stringify(kept)};\n${readFileSync(worker, 'utf8')}`)
    },
  }
}

/** A style sheet without comments and the spaces that nothing hangs on. */
const plainStyles = (css: string): string =>
  css
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\s+/g, ' ')
    .replace(/ ?([{};,]) ?/g, '$1')
    .replace(/: /g, ':')

/** Takes the indentation out of templates and styles: nothing on screen hangs on it. */
function noIndents(): Plugin {
  return {
    name: 'no-indents',
    apply: 'build',
    transform: {
      filter: { id: /web.(app-shell|elements.|pages.|styles.).*ts$/ },
      handler: (code) => ({
        code: code.replace(/css`[^`]*`/g, plainStyles).replace(/\n +/g, '\n'),
        map: null,
      }),
    },
  }
}

/** Fetches what is imported later as it stands: no part of the program brings styles or preloads of its own. */
function plainImports(): Plugin {
  return {
    name: 'plain-imports',
    apply: 'build',
    transform: {
      filter: { id: /vite.preload-helper/ },
      handler: () => ({ code: 'export const __vitePreload = (fetchPart) => fetchPart()', map: null }),
    },
  }
}

/** Whether a module is needed by the frame of every page. */
const isFrame = (id: string): boolean =>
  /node_modules.(lit|@lit|lit-html|lit-element)\b(?!.*(repeat|keyed|query))|preload-helper|@oxc-project|web.(main|app-shell|router|page-files|offline|own-script|session)\.ts|web.styles.|elements.(display-choices|big-keypad|big-keypad-text|ask-twice|amounts)\.ts|web.(outbox|kept-entry|lumber-choice)\.ts|units.(length|feet|board-foot|money)\.ts|shared.problem\.ts|cutting.(priced|together|grade-names|stock-board|cut-blanks|yard-terms)\.ts/.test(
    id,
  )

export default defineConfig({
  root: 'web',
  base: '/',
  plugins: [noIndents(), plainImports(), keptFiles()],
  resolve: { alias: [{ find: /^zod$/, replacement: at('web/schema-settings.ts') }] },
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: false,
    rolldownOptions: {
      // The search is asked by name in the browser tests and the bench, as pages ask it.
      input: { index: at('web/index.html'), 'cut-search': at('web/cut-search.ts'), sw: at('web/sw.ts') },
      preserveEntrySignatures: 'allow-extension',
      output: {
        // A service worker rules the folder it lies in.
        entryFileNames: ({ name }) => (name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js'),
        // What every page needs comes in one file, with what that needs: files that wait for each other never begin.
        codeSplitting: { groups: [{ name: 'frame', test: isFrame }] },
      },
    },
  },
  worker: { format: 'es' },
  optimizeDeps: { exclude: ['highs'] },
  server: { host: '127.0.0.1', proxy: { '^/api/': server } },
})
