import { availableParallelism } from 'node:os'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vitest/config'

/**
 * Folders of `test/` that run in Node. `window` runs in Playwright, `bench` by `npm run bench`. Those that replace no
 * module and keep no state share theirs from file to file: to read the engine anew for each took as long as the tests.
 */
const shared = [
  'engine',
  'sources',
  'pins',
  'validation',
  'golden',
  'laws',
  'house',
  'drawings',
  'cli',
  'fuzz',
]
const apart = ['bridge', 'files']

/** Tests of some folders of `test/` as one project: what they import is read and compiled once for all of them. */
const folders = (name: string, of: readonly string[], isolate: boolean) => ({
  extends: true as const,
  test: { name, include: of.map((folder) => `test/${folder}/**/*.test.ts`), isolate },
})

export default defineConfig({
  test: {
    environment: 'node',
    // Long, for busy machines: it ends what hangs, and costs nothing where a test passes.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    // by itself vitest leaves a core free for watching: on two that is half of the machine
    maxWorkers: Math.max(2, availableParallelism()),
    setupFiles: ['test/seed.ts'],
    projects: [
      folders('node', shared, false),
      folders('apart', apart, true),
      {
        // State classes use runes: they need the compiler, and the reactive (browser) half of the runtime.
        extends: true as const,
        plugins: [svelte()],
        resolve: { conditions: ['browser'] },
        test: { name: 'page', include: ['test/page/**/*.test.ts'], isolate: false },
      },
    ],
  },
})
