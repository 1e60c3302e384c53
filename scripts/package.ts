import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { isInstalled, runTool } from './child.ts'
import { prepareMachine } from './computer.ts'
import { makeDeb, makeTar } from './package/deb.ts'
import { writeSums } from './package/sums.ts'

// Fetched for a package and not kept: they would double the tree for a thing done once per release.
const builder = 'electron-builder@26.17.0'
const fuses = '@electron/fuses@2.1.3'

const out = 'release'

/** Fuses that a runtime has only from some major version on; set in an older one, packaging stops. */
const fusesSince: Readonly<Record<string, number>> = { grantFileProtocolExtraPrivileges: 29 }

type Config = Record<string, unknown> & { readonly electronFuses: Readonly<Record<string, boolean>> }

/** What each system is packed as; the first is tried first and holds what the others are made of. */
const targets: Readonly<Record<string, readonly string[]>> = {
  linux: ['dir', 'tar.gz', 'deb', 'AppImage'],
  win32: ['dir', 'nsis'],
  darwin: ['dir', 'dmg'],
}
const systemWord: Readonly<Record<string, string>> = { linux: '--linux', win32: '--win', darwin: '--mac' }

/**
 * `npm run package [-- <target> …]`: the program for this system in `release/`, its fuses read back, and sums of what is
 * to be published. What cannot be made here is named in one line, and the rest is made all the same.
 */
export async function run(asked: readonly string[]): Promise<number> {
  const all = targets[process.platform] ?? []
  const unknown = asked.find((word) => !all.includes(word))
  if (unknown !== undefined || all.length === 0) {
    console.error(`Nothing is packed as ${unknown ?? process.platform}; here there are ${all.join(', ')}.`)
    return 1
  }
  const { env } = await prepareMachine()
  const runtime = env['ELECTRON_OVERRIDE_DIST_PATH']
  if (runtime === undefined) {
    console.error('There is no Electron runtime to pack: node_modules/electron could not fetch its own.')
    return 1
  }
  rmSync(out, { recursive: true, force: true })
  mkdirSync(out)
  const config = configFor(runtime)
  if (!pack(config, 'dir')) return 1
  const unpacked = path.join(out, readdirSync(out).find((name) => name.endsWith('-unpacked')) ?? '')
  const wanted = (asked.length === 0 ? all : asked).filter((target) => target !== 'dir')
  const failed = wanted.filter((target) => !make(config, target, unpacked))
  for (const target of failed) console.log(`Left out: ${target}, because ${reasonFor(target)}.`)
  const told = readFuses(unpacked)
  console.log(`\n${writeSums(out)}`)
  const started = await startsAndOpens(unpacked, env)
  return told && started && asked.every((target) => !failed.includes(target)) ? 0 : 1
}

/** The configuration with the runtime at hand, which is not fetched anew and may be an older one. */
function configFor(runtime: string): string {
  const version = readFileSync(path.join(runtime, 'version'), 'utf8').trim().replace(/^v/, '')
  const major = Number(version.split('.')[0])
  const staged = path.join(out, '.runtime')
  // What a runtime for tests was given to open would be started instead of the program.
  cpSync(runtime, staged, {
    recursive: true,
    filter: (file) => !/[/\\]resources[/\\](app|default_app)(\.asar)?$/.test(file),
  })
  const kept = JSON.parse(readFileSync('electron-builder.json', 'utf8')) as Config
  const known = Object.entries(kept.electronFuses).filter(([name]) => major >= (fusesSince[name] ?? 0))
  const config = {
    ...kept,
    electronDist: path.resolve(staged),
    electronVersion: version,
    electronFuses: Object.fromEntries(known),
  }
  const file = path.join(out, '.config.json')
  writeFileSync(file, JSON.stringify(config, null, 2))
  console.log(`Packing with Electron ${version}.`)
  return file
}

const npx = process.platform === 'win32' ? 'npx.cmd' : 'npx'

function pack(config: string, target: string, unpacked?: string): boolean {
  const words = ['--yes', builder, '--config', config, systemWord[process.platform] ?? '', target]
  const made = unpacked === undefined ? [] : ['--prepackaged', unpacked]
  console.log(`\n== ${target}`)
  const { status } = spawnSync(npx, [...words, ...made, '--publish', 'never'], { stdio: 'inherit' })
  return status === 0
}

/** One target of the unpacked program: by the system's own tools where it has them. */
function make(config: string, target: string, unpacked: string): boolean {
  if (target === 'tar.gz' && isInstalled('tar')) return makeTar(unpacked, out)
  if (target === 'deb' && isInstalled('dpkg-deb')) return makeDeb(unpacked, out)
  return pack(config, target, unpacked)
}

/** What a target needs that is not there. */
const reasons: Readonly<Record<string, string>> = {
  'tar.gz': 'there is no tar here',
  deb: 'there is no dpkg-deb here',
  AppImage: 'the packager fetches mksquashfs and the runtime of AppImages from the network, which failed',
}
const reasonFor = (target: string) => reasons[target] ?? 'the packager stopped; its words stand above'

/** Fuses of the packed program as they are in its file. */
function readFuses(unpacked: string): boolean {
  const program = path.join(unpacked, process.platform === 'win32' ? 'Pitchline.exe' : 'pitchline')
  if (!existsSync(program)) return process.platform === 'darwin'
  console.log('\n== fuses, read back')
  return spawnSync(npx, ['--yes', fuses, 'read', '--app', program], { stdio: 'inherit' }).status === 0
}

/** Whether the packed program starts with a build as a file manager gives it, and shows it. */
async function startsAndOpens(unpacked: string, env: NodeJS.ProcessEnv): Promise<boolean> {
  if (process.platform !== 'linux') return true
  const packed = { ...env, PITCHLINE_PACKED: path.resolve(unpacked, 'pitchline') }
  const words = ['test', 'test/window/packed.window.spec.ts', '--project=window', '--workers=1']
  return (await runTool('@playwright/test/cli.js', words, packed)) === 0
}
