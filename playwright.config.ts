import { defineConfig } from '@playwright/test'
import { chromiumPath, readScreen } from './test/window/launch/machine.ts'

/** Two runs of the page a person meets: the real window, and the same page served to a browser. */
export default defineConfig({
  testDir: 'test/window',
  testMatch: '**/*.spec.ts',
  outputDir: 'test-results',
  timeout: 60_000,
  workers: 1,
  fullyParallel: false,
  reporter: [['list']],
  use: {
    viewport: { width: 1280, height: 800 },
    launchOptions: { executablePath: chromiumPath() },
    ...readScreen()
  }
})
