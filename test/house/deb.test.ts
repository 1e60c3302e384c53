import { execFileSync, spawnSync } from 'node:child_process'
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { isInstalled } from '../../scripts/child.ts'
import { makeDeb } from '../../scripts/package/deb.ts'

// The package is made of a program of a few bytes, read back by Debian's own tool, and what a desktop would find in it is
// asked of the desktop's own tools. `npm run package` makes it of the real one.

describe.skipIf(!isInstalled('dpkg-deb'))('the .deb', () => {
  let folder = ''
  let deb = ''
  const laid = (file: string) => path.join(folder, 'laid', file)
  const textOf = (file: string) => readFileSync(laid(file), 'utf8')
  const lineOf = (text: string, key: string) => new RegExp(`^${key}=(.*)$`, 'm').exec(text)?.[1] ?? ''

  beforeAll(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-deb-'))
    const unpacked = path.join(folder, 'linux-unpacked')
    mkdirSync(path.join(unpacked, 'resources'), { recursive: true })
    for (const file of [
      'pitchline',
      'chrome-sandbox',
      'resources/app.asar',
      'LICENSE',
      'LICENSES.chromium.html',
    ])
      writeFileSync(path.join(unpacked, file), file)
    chmodSync(path.join(unpacked, 'pitchline'), 0o755)
    expect(makeDeb(unpacked, folder)).toBe(true)
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }
    deb = path.join(folder, `pitchline_${version}_amd64.deb`)
    execFileSync('dpkg-deb', ['-x', deb, path.join(folder, 'laid')])
    execFileSync('dpkg-deb', ['-e', deb, path.join(folder, 'control')])
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  it('names itself, what it needs, and its size', () => {
    const field = (name: string) => execFileSync('dpkg-deb', ['-f', deb, name], { encoding: 'utf8' }).trim()
    expect(field('Package')).toBe('pitchline')
    expect(field('Depends').split(', ')).toContain('libgtk-3-0t64 | libgtk-3-0')
    expect(Number(field('Installed-Size'))).toBeGreaterThan(0)
  })

  it('lays everything as root’s, the program where the desktop entry starts it, with its licences', () => {
    const listed = execFileSync('dpkg-deb', ['-c', deb], { encoding: 'utf8' }).trimEnd().split('\n')
    expect(listed.filter((line) => !/^\S+ root\/root /.test(line))).toEqual([])
    const [program = ''] = lineOf(textOf('usr/share/applications/pitchline.desktop'), 'Exec').split(' ')
    expect(statSync(laid(program)).mode & 0o111).toBe(0o111)
    for (const licence of [
      'opt/Pitchline/LICENSE',
      'opt/Pitchline/LICENSES.chromium.html',
      'usr/share/doc/pitchline/copyright',
    ])
      expect(existsSync(laid(licence)), licence).toBe(true)
    // The profile that lets Chromium's sandbox be made is for that very program.
    expect(textOf('opt/Pitchline/resources/apparmor-profile')).toContain(`"${program}"`)
  })

  it('has an icon of the name in the desktop entry', () => {
    const name = lineOf(textOf('usr/share/applications/pitchline.desktop'), 'Icon')
    expect(textOf(`usr/share/icons/hicolor/scalable/apps/${name}.svg`)).toContain('<svg')
    expect(existsSync(laid(`usr/share/icons/hicolor/512x512/apps/${name}.png`))).toBe(true)
  })

  it.each(['postinst', 'postrm'])('%s is a program that the shell can read', (script) => {
    const file = path.join(folder, 'control', script)
    expect(statSync(file).mode & 0o111).toBe(0o111)
    expect(spawnSync('sh', ['-n', file]).status).toBe(0)
  })

  it('goes without a file of anybody’s: only what came with it is taken away', () => {
    // All that the script finds is a tool of that name which says what it was to remove.
    const tools = path.join(folder, 'tools')
    mkdirSync(tools)
    writeFileSync(path.join(tools, 'rm'), '#!/bin/sh\necho "$@"\n', { mode: 0o755 })
    const ran = spawnSync('/bin/sh', [path.join(folder, 'control', 'postrm')], {
      encoding: 'utf8',
      env: { PATH: tools, HOME: folder },
    })
    expect(ran).toMatchObject({ status: 0, stdout: '-f /etc/apparmor.d/pitchline\n' })
  })

  it.skipIf(!isInstalled('update-mime-database') || !isInstalled('xdg-mime'))(
    'is what a desktop opens *.build.json with, and no other JSON',
    () => {
      const share = laid('usr/share')
      execFileSync('update-mime-database', [path.join(share, 'mime')], { stdio: 'ignore' })
      const type = lineOf(textOf('usr/share/applications/pitchline.desktop'), 'MimeType').replace(/;$/, '')
      expect(textOf('usr/share/mime/globs2').trimEnd().split('\n').at(-1)).toBe(`80:${type}:*.build.json`)
      const asked = spawnSync('xdg-mime', ['query', 'default', type], {
        encoding: 'utf8',
        env: {
          PATH: process.env['PATH'],
          HOME: folder,
          XDG_DATA_DIRS: share,
          XDG_DATA_HOME: path.join(folder, 'none'),
        },
      })
      expect(asked.stdout.trim()).toBe('pitchline.desktop')
    },
  )
})
