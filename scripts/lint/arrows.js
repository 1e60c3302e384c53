/**
 * Who may import whom: the one table. `A → B` is allowed only where it is written here; type imports count too.
 * The rule that reads it is arrows-rule.js; test/house checks that it bites.
 */

/** Folders and top-level files of shared-engine, in order. */
export const engineOrder = [
  'constants.ts',
  'mistakes',
  'units',
  'numeric',
  'geometry',
  'reference',
  'entries',
  'assume',
  'machine',
  'pack',
  'motor',
  'stages',
  'track',
  'ground',
  'heat',
  'vehicle',
  'cases',
  'figures',
  'workings',
  'limits',
  'drive',
  'notes.ts',
  'check.ts',
  'explain',
  'search',
  'uncertainty',
  'remedy',
  'compare',
  'sweep',
  'alarms',
  'log',
  'measure',
  'fit',
  'validate',
  'draw',
  'report',
  'jobs',
  'index.ts',
]

/**
 * Folders and top-level files of each part, in order: each may use those before it, and itself. `questions/*` is each
 * folder there by itself: they may not use each other. What stands in a list of its own neither.
 * @type {Readonly<Record<string, ReadonlyArray<string | readonly string[]>>>}
 */
export const orders = {
  'shared-engine': engineOrder,
  'src-renderer': [
    'styles',
    ['host', 'workers'],
    'state',
    ['parts', 'plots'],
    'path',
    'fields',
    'limits',
    'strip',
    'questions/shared',
    'questions/*',
    'questions',
    'start',
    'bench',
    'sheet',
    'commands',
    'frame',
    'App.svelte',
    'main.ts',
  ],
  'src-main': [['files', 'bridge'], 'shell', 'serve', 'cli', 'main.ts'],
}

/**
 * Between the parts of the project. `mode: 'types'` allows `import type` only.
 * @type {ReadonlyArray<{ from: string, to: string, mode?: 'types' }>}
 */
export const arrows = [
  { from: 'src-renderer', to: 'shared-engine' },
  { from: 'src-main', to: 'shared-engine' },
  { from: 'src-renderer', to: 'src-main/bridge/contract.ts', mode: 'types' },
  // The demo builds are data: bundled as text, because the page may fetch nothing.
  { from: 'src-renderer/host', to: 'examples' },
  { from: 'src-main', to: 'package.json' },
  { from: 'test', to: '' },
  { from: 'scripts', to: '' },
  { from: 'electron.config.ts', to: 'scripts' },
  { from: 'vitest.config.ts', to: 'scripts' },
  { from: 'playwright.config.ts', to: 'test/window' },
  { from: 'eslint.config.js', to: 'scripts/lint' },
]

/** Packages each part may import; a trailing `*` matches any ending. Parts not listed may import any. */
export const packages = {
  'shared-engine': [
    'zod',
    'd3-scale',
    'd3-shape',
    'd3-array',
    'd3-format',
    'ml-levenberg-marquardt',
    'ml-matrix',
    'papaparse',
  ],
  'src-renderer': ['svelte', 'svelte/*', 'd3-*', 'katex', 'katex/*', '@fontsource-variable/*', 'zod'],
  'src-main': ['electron', 'node:*', 'zod', 'commander', 'pdfkit', 'source-sans/*'],
}
