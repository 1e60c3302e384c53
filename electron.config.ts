import path from 'node:path'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import type { InlineConfig, Plugin, Rolldown } from 'vite'
import { buildFacts } from './scripts/build-facts.ts'

/**
 * The one build configuration: everything that runs comes from here. Each target is a Vite build of its own, because
 * each runs somewhere else: the main process and the preload script in Electron (from 25 on), the page in Chromium
 * (from 114 on) or a browser, the command line and the benches in Node 20.
 */

/** This file's folder, whatever folder the build was started from. */
const root = import.meta.dirname ?? process.cwd()

const shared: InlineConfig = {
  root,
  configFile: false,
  logLevel: 'warn',
  define: buildFacts(root),
}

type NodeTarget = {
  entries: Record<string, string>
  folder: string
  format: 'cjs' | 'es'
  target: string
  minify?: boolean
  /** All in one file, what is imported later included; or what goes into files of their own. */
  parts?: 'one' | Rolldown.OutputOptions['codeSplitting']
  /** Leaves in the folder what an earlier build of the same target has put there. */
  beside?: boolean
  /** Packages that stay outside of the bundle: tools that the benches drive. */
  external?: string[]
}

/** A bundle without `node_modules` beside it: what runs needs only Node's own modules, or Electron's. */
const forNode = ({
  entries,
  folder,
  format,
  target,
  minify = false,
  parts,
  beside = false,
  external = [],
}: NodeTarget): InlineConfig => ({
  ...shared,
  publicDir: false,
  ssr: { noExternal: true, external: ['electron', ...external], target: 'node' },
  build: {
    ssr: true,
    target,
    minify,
    outDir: path.join('dist', folder),
    emptyOutDir: !beside,
    rolldownOptions: {
      input: entries,
      output: {
        format,
        // What is imported later: what runs as a script can require it, but not import it.
        ...(parts === undefined
          ? {}
          : {
              codeSplitting: parts === 'one' ? false : parts,
              dynamicImportInCjs: false,
              // What is in one file is run when it is imported, not when another of that file is.
              strictExecutionOrder: parts !== 'one',
              // Then a file is read as it stands, a byte a letter, and V8 keeps it so.
              charset: 'ascii',
            }),
        entryFileNames: format === 'cjs' ? '[name].cjs' : '[name].js',
        chunkFileNames: format === 'cjs' ? '[name]-[hash].cjs' : '[name]-[hash].js',
      },
    },
  },
})

/**
 * The reader of command lines can start a command that is a program of its own. None of ours is, and Node's module for
 * it takes a thirtieth of a check to load.
 */
const noPrograms: Plugin = {
  name: 'pitchline:no-programs',
  enforce: 'pre',
  resolveId: (id, importer) =>
    id === 'node:child_process' && importer?.includes('commander') ? '\0no-programs' : undefined,
  load: (id) => (id === '\0no-programs' ? 'export default {}' : undefined),
}

/**
 * Letters of the mathematics in one format: the sheet names each in three, of which Chromium takes the first, and the
 * copies would be a third of the page.
 */
const lettersOnce: Plugin = {
  name: 'pitchline:letters-once',
  enforce: 'pre',
  transform: (code, id) =>
    /katex(\.min)?\.css$/.test(id)
      ? code.replace(/,url\([^)]*\.(woff|ttf)\) format\("(woff|truetype)"\)/g, '')
      : undefined,
}

/** The page and its workers: relative, hashed, nothing inline, as its content security policy asks. */
const page: InlineConfig = {
  ...shared,
  base: './',
  publicDir: false,
  plugins: [svelte({ configFile: false }), lettersOnce],
  worker: { format: 'es' },
  build: {
    target: 'chrome114',
    outDir: 'dist/page',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // One file of fonts, mathematics and plots, read from the disk: its size is held to in test/house/page-size.test.ts.
    chunkSizeWarningLimit: 2000,
  },
}

/**
 * The command line's files, one after the other: the program, what starts it, the thread, which is started by its
 * file's name, and what writes a PDF, which is loaded by it. All that a check runs is one file of the program's, so that
 * a check reads no other command; CommonJS, because only of a script can V8's compiled form be kept
 * (src-main/cli/compiled.ts).
 */
const commandLineFiles: readonly Pick<NodeTarget, 'entries' | 'parts'>[] = [
  {
    entries: { program: 'src-main/cli/main.ts' },
    parts: { groups: [{ name: 'check', test: /src-main[\\/]cli[\\/]check[\\/](run|text)/ }] },
  },
  { entries: { pitchline: 'src-main/cli/pitchline.ts' }, parts: 'one' },
  { entries: { thread: 'src-main/cli/thread.ts' }, parts: 'one' },
  { entries: { pdf: 'src-main/cli/report/pdf.ts' }, parts: 'one' },
]

const commandLine = commandLineFiles.map((files, at) => ({
  ...forNode({ ...files, folder: 'cli', format: 'cjs', target: 'node20', minify: true, beside: at > 0 }),
  plugins: [noPrograms],
}))

/** Each target's builds, in order. */
export const targets = {
  page: [page],
  main: [forNode({ entries: { main: 'src-main/main.ts' }, folder: 'main', format: 'cjs', target: 'node18' })],
  preload: [
    forNode({
      entries: { preload: 'src-main/bridge/preload.ts' },
      folder: 'preload',
      format: 'cjs',
      target: 'node18',
    }),
  ],
  cli: commandLine,
  serve: [
    forNode({
      entries: { serve: 'src-main/serve/serve.ts' },
      folder: 'serve',
      format: 'es',
      target: 'node20',
    }),
  ],
} satisfies Record<string, readonly InlineConfig[]>

/** Benches are bundled as what ships is, so that they measure that. Entries: file name → path. */
export const benches = (entries: Record<string, string>): InlineConfig =>
  forNode({ entries, folder: 'bench', format: 'es', target: 'node20', external: ['playwright'] })
