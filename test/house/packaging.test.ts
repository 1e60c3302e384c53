import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

type Json = Record<string, unknown>
const read = (file: string) => JSON.parse(readFileSync(file, 'utf8')) as Json
const builder = read('electron-builder.json')
const manifest = read('package.json')
const lock = read('package-lock.json') as {
  packages: Record<string, { version?: string; resolved?: string }>
}

describe('the packaged program', () => {
  it('has the fuses of a shipped program', () => {
    // Electron's own list of fuses; `wasmTrapHandlers` keeps its default.
    expect(builder['electronFuses']).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    })
    expect(builder['asar']).toBe(true)
  })

  it('is made for three systems, the deb first', () => {
    expect(builder['linux']).toMatchObject({ target: ['deb', 'AppImage'] })
    expect(builder['win']).toEqual({ target: ['nsis'] })
    expect(builder['mac']).toMatchObject({ target: ['dmg'], hardenedRuntime: true })
  })

  it('holds only what runs: bundles, manifest, licence; no node_modules, sources or tests', () => {
    expect(builder['files']).toEqual([
      'dist/main/**',
      'dist/preload/**',
      'dist/page/**',
      'package.json',
      'LICENSE',
      '!node_modules',
    ])
  })

  it('keeps its sandbox', () => {
    expect(readFileSync('electron-builder.json', 'utf8')).not.toContain('sandbox')
    expect(JSON.stringify(manifest['scripts'])).not.toContain('sandbox')
  })

  it('opens *.build.json from the file manager, has an icon, and leaves files behind when it goes', () => {
    expect(builder['fileAssociations']).toMatchObject([{ ext: 'build.json', role: 'Editor' }])
    expect(builder['nsis']).toMatchObject({ deleteAppDataOnUninstall: false })
    expect(existsSync(builder['icon'] as string)).toBe(true)
  })

  it('has an icon from which those of Windows and macOS can be made: square, 512 px at least', () => {
    // *Source:* PNG (ISO/IEC 15948), 11.2.1: the header's width and height; electron-builder, *Icons*: 512 × 512 for macOS.
    const png = readFileSync(builder['icon'] as string)
    expect(png.toString('latin1', 1, 4)).toBe('PNG')
    const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)]
    expect(width).toBe(height)
    expect(width).toBeGreaterThanOrEqual(512)
  })

  it('says nothing that the packager does not know for Windows and macOS, where it is not made here', () => {
    // *Source:* electron-builder 26, its options for win, nsis, mac and dmg, from memory; it refuses unknown ones itself.
    const known: Readonly<Record<string, readonly string[]>> = {
      win: ['target', 'icon', 'legalTrademarks'],
      nsis: ['oneClick', 'perMachine', 'deleteAppDataOnUninstall', 'license'],
      mac: ['target', 'category', 'hardenedRuntime', 'gatekeeperAssess', 'icon'],
      dmg: ['title', 'icon', 'contents'],
    }
    for (const [part, names] of Object.entries(known))
      expect(
        Object.keys(builder[part] as Json).filter((key) => !names.includes(key)),
        part,
      ).toEqual([])
  })

  it('carries the licence beside the program, as the runtime does its own', () => {
    expect(builder['extraFiles']).toEqual(['LICENSE'])
  })

  it('is packed, read back and started by `npm run package`, with tools of one version', () => {
    expect((manifest['scripts'] as Json)['package']).toBe(
      'node scripts/run.js build && node scripts/run.js package',
    )
    const script = readFileSync('scripts/package.ts', 'utf8')
    expect(script).toMatch(/'electron-builder@\d+\.\d+\.\d+'/)
    expect(script).toMatch(/'@electron\/fuses@\d+\.\d+\.\d+'/)
    expect(script).toContain('test/window/packed.window.spec.ts')
  })

  it('publishes nothing by itself', () => {
    expect(builder['publish']).toBeNull()
    expect(manifest['private']).toBe(true)
  })
})

describe('dependencies', () => {
  const named = { ...(manifest['dependencies'] as Json), ...(manifest['devDependencies'] as Json) }

  it('are each of one exact version, as in the lock file, which names no registry', () => {
    for (const [name, version] of Object.entries(named)) {
      // a package under another name says which: npm:typescript@7.0.2
      const exact = String(version).replace(/^npm:[a-z-]+@/, '')
      expect(exact, name).toMatch(/^\d+\.\d+\.\d+$/)
      expect(lock.packages[`node_modules/${name}`]?.version, name).toBe(exact)
    }
    expect(Object.values(lock.packages).filter(({ resolved }) => resolved?.startsWith('http'))).toEqual([])
  })

  it('stay few: 290 packages at most, tools and their own dependencies included', () => {
    // Builds for other computers are one package in many names. 290 with what writes a PDF (18 of its own) and reads it back.
    const counted = Object.keys(lock.packages).filter(
      (name) => !/^node_modules\/(@typescript\/typescript|@napi-rs\/canvas)-/.test(name),
    )
    expect(counted.length - 1).toBeLessThanOrEqual(290)
  })

  it('each have a reason in DEVELOPERS.md', () => {
    const text = readFileSync('DEVELOPERS.md', 'utf8')
    const groups = ['@types/']
    const missing = Object.keys(named).filter(
      (name) => !text.includes(`\`${name}\``) && !groups.some((group) => name.startsWith(group)),
    )
    expect(missing).toEqual([])
  })

  it('hold an Electron that was supported on the day it was looked up', () => {
    const { checkedOn, supportedMajors } = read('test/house/electron-support.json')
    expect(checkedOn).toMatch(/^\d{4}-\d{2}-\d{2}$/)
    expect(supportedMajors).toContain(Number(String(named['electron']).split('.')[0]))
  })
})

it('.ci/run installs and tests, and does nothing else', () => {
  const lines = readFileSync('.ci/run', 'utf8')
    .split('\n')
    .filter((line) => line !== '')
  expect(lines).toEqual(['#!/bin/sh', 'set -e', 'npm ci && npm test'])
})
