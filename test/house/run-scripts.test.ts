import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { expect, it, onTestFinished, vi } from 'vitest'
import { findElectron } from '../../scripts/electron-runtime.ts'

it.each([['nonsense'], []])(
  'a script that there is not (%s) is refused in one line that lists the others',
  (...words) => {
    const ran = spawnSync(process.execPath, ['scripts/run.js', ...words], { encoding: 'utf8' })
    expect(ran.status).toBe(1)
    expect(ran.stdout).toBe('')
    expect(ran.stderr).toMatch(/^[^\n]+; there are bench, build, [a-z, -]*, validation\.\n$/)
    // A module that scripts share is none.
    expect(ran.stderr).not.toContain('child')
  },
)

/** What is said while a package of Electron whose download ends so is looked for, and what is found. */
async function looked(
  install: string,
): Promise<{ readonly said: readonly string[]; readonly found: boolean }> {
  const own = mkdtempSync(path.join(os.tmpdir(), 'pitchline-electron-'))
  onTestFinished(() => rmSync(own, { recursive: true, force: true }))
  writeFileSync(path.join(own, 'package.json'), '{"version":"1.2.3"}')
  mkdirSync(path.join(own, 'dist'))
  writeFileSync(path.join(own, 'install.js'), install)
  vi.stubEnv('ELECTRON_OVERRIDE_DIST_PATH', '')
  const log = vi.spyOn(console, 'log').mockReturnValue()
  onTestFinished(() => void vi.restoreAllMocks())
  onTestFinished(() => void vi.unstubAllEnvs())
  const found = (await findElectron(own)) !== null
  return { said: log.mock.calls.map(([line]) => String(line)), found }
}

it('a download of Electron’s runtime that fails is told, and that it is tried again', async () => {
  expect(await looked('process.exit(1)')).toEqual({
    said: [
      'Fetching the Electron 1.2.3 runtime, which is kept…',
      'It could not be fetched; the next start tries again.',
    ],
    found: false,
  })
})

it('one that succeeds is told in one line', async () => {
  const install = "require('node:fs').writeFileSync(__dirname + '/dist/electron', '')"
  expect(await looked(install)).toEqual({
    said: ['Fetching the Electron 1.2.3 runtime, which is kept…'],
    found: true,
  })
})
