import { defineConfig } from '@playwright/test'
import { chromiumPath, rootFlags } from './test/window/launch/computer.ts'

/**
 * Every spec runs twice: in the real window, and on the same page served to a browser. A spec for one of them only is
 * named `*.window.spec.ts` or `*.browser.spec.ts`.
 */
export default defineConfig<{ shownIn: 'window' | 'browser' }>({
  testDir: 'test/window',
  outputDir: 'test-results',
  snapshotPathTemplate: '{testDir}/looks/{arg}{ext}',
  globalSetup: './test/window/launch/global-setup.ts',
  // Long, for busy machines: it is the end of what fails, and costs nothing where it passes.
  timeout: 120_000,
  expect: { timeout: 30_000 },
  // Each test has data and files of its own; what it waits for leaves a core idle for another. Two at a time leave the
  // cores idle for a third of the time, where nothing else runs beside them.
  workers: 3,
  fullyParallel: true,
  reporter: [['list']],
  use: {
    viewport: { width: 1280, height: 800 },
    launchOptions: { executablePath: chromiumPath(), args: [...rootFlags] },
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
      testIgnore: '**/*.browser.spec.ts',
      use: { shownIn: 'window' },
    },
  ],
})
