import { defineConfig } from '@playwright/test'
import { chromiumPath, forAShortLife, rootFlags } from './test/window/launch/computer.ts'

/**
 * Specs of the page alone: no file, dialog, menu, start or end of the program in them. Window and browser show the same
 * page with the same engine, and to ask both took a third of the time of all specs; each view is opened in the real window
 * by the others (change.spec.ts). `PITCHLINE_BOTH=1` runs these there too, as is right before a release or with a new
 * runtime.
 */
const ofThePage = [
  ...[
    'alarms',
    'bench',
    'entries',
    'find',
    'gears',
    'gears-found',
    'look-at',
    'order',
    'questions',
    'redrawn',
    'remedy',
    'scrolls',
  ],
  ...['side', 'uncertainty', 'working'],
].map((name) => `**/${name}.spec.ts`)
/** `npm run package` looks at what it packed; elsewhere nothing is. */
const ofThePacked = ['**/packed.window.spec.ts']
const packed = (process.env['PITCHLINE_PACKED'] ?? '') !== ''
const both = (process.env['PITCHLINE_BOTH'] ?? '') !== ''

/**
 * A spec runs twice: in the real window, and on the same page served to a browser. One for either only is named
 * `*.window.spec.ts` or `*.browser.spec.ts`; those of the page alone are listed above.
 */
export default defineConfig<{ shownIn: 'window' | 'browser' }>({
  testDir: 'test/window',
  outputDir: 'test-results',
  snapshotPathTemplate: '{testDir}/looks/{arg}{ext}',
  globalSetup: './test/window/launch/global-setup.ts',
  // Long, for busy machines: it is the end of what fails, and costs nothing where it passes. Beside all other tests on two
  // cores a spec takes three to five times as long as alone.
  timeout: 300_000,
  expect: { timeout: 30_000 },
  // Each test has data and files of its own; what it waits for leaves a core idle for another. Two at a time leave the
  // cores idle for a third of the time, where nothing else runs beside them.
  workers: 3,
  fullyParallel: true,
  reporter: [['list']],
  use: {
    viewport: { width: 1280, height: 800 },
    launchOptions: { executablePath: chromiumPath(), args: [...rootFlags, forAShortLife] },
  },
  projects: [
    // The longest test of all comes first: begun last, it would run on with a core idle.
    { name: 'soak', testMatch: '**/soak.browser.spec.ts', use: { shownIn: 'browser' } },
    {
      name: 'browser',
      testMatch: '**/*.spec.ts',
      testIgnore: ['**/*.window.spec.ts', '**/soak.browser.spec.ts'],
      use: { shownIn: 'browser' },
    },
    {
      name: 'window',
      testMatch: '**/*.spec.ts',
      testIgnore: ['**/*.browser.spec.ts', ...(both ? [] : ofThePage), ...(packed ? [] : ofThePacked)],
      use: { shownIn: 'window' },
    },
  ],
})
