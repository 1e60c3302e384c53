import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { expect, it } from 'vitest'
import { buildForUse } from '../../scripts/build.ts'

// What shipped was once the framework's development version: Vite's own script runner had said "development" before the
// build began, and every change of a field took hundreds of stack traces.
it('builds what ships for use, whatever the environment says', async () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-production-'))
  const before = process.env['NODE_ENV']
  try {
    process.env['NODE_ENV'] = 'development'
    const entry = path.join(folder, 'entry.js')
    writeFileSync(entry, 'console.log(import.meta.env.DEV ? "for development" : "for use")')
    const outDir = path.join(folder, 'out')
    await buildForUse({
      root: folder,
      configFile: false,
      logLevel: 'silent',
      build: { outDir, rolldownOptions: { input: entry, output: { entryFileNames: 'built.js' } } },
    })
    const built = readFileSync(path.join(outDir, 'built.js'), 'utf8')
    expect(built).toContain('for use')
    expect(built).not.toContain('for development')
    expect(process.env['NODE_ENV']).toBe('development')
  } finally {
    process.env['NODE_ENV'] = before
    rmSync(folder, { recursive: true, force: true })
  }
})
