import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, afterEach, beforeEach, expect, test, vi } from 'vitest'
import { withEntry } from '../../shared-engine/entries/edit.ts'
import { readPatternText, readPatternValue } from '../../shared-engine/drive/read.ts'
import { readBuild, readStoredBuildText, readStoredBuildValue } from '../../shared-engine/entries/read.ts'
import { readAlarms } from '../../shared-engine/log/facts/alarms.ts'
import { readColumns } from '../../shared-engine/log/columns/choice.ts'
import { logOf } from '../../shared-engine/log/log.ts'
import { TextReader, tooManyBytes } from '../../shared-engine/log/text/reader.ts'
import { readReadings } from '../../shared-engine/measure/read.ts'
import { catalogue, type MistakeCode } from '../../shared-engine/mistakes/catalogue.ts'
import { readSpaceValue } from '../../shared-engine/search/space-read.ts'
import { planOf } from '../../shared-engine/search/space.ts'
import { readEntry } from '../../shared-engine/units/entry.ts'
import { contract } from '../../src-main/bridge/contract.ts'
import { receive, type Asker, type Handlers } from '../../src-main/bridge/receive.ts'
import { commands } from '../../src-main/cli/commands.ts'
import { runCommandLine } from '../../src-main/cli/program.ts'
import { reportStopped } from '../../src-main/cli/trouble.ts'
import { saveAtomically } from '../../src-main/files/atomic-save.ts'
import { diskFileSystem, type FileSystem } from '../../src-main/files/file-system.ts'
import { OpenFiles } from '../../src-main/files/open-files.ts'
import { FileService } from '../../src-main/files/file-service.ts'
import { readWhole } from '../../src-main/files/read.ts'
import { RecentFiles } from '../../src-main/files/recent.ts'
import { OutsideChanges } from '../../src-main/files/watch.ts'
import { plainBuild, soilBuild } from '../fixtures/build/plain.ts'
import { demo } from '../engine/search/support.ts'
import { asShown } from '../files/support/as-shown.ts'

/** What real code answered: a result, or mistakes alone. */
type Answer = { readonly ok: boolean; readonly mistakes?: readonly { readonly code: MistakeCode }[] }

const bytesOf = (text: string) => new TextEncoder().encode(text)
const folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-mistakes-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function fileOf(name: string, text: string, mode = 0o644): string {
  const file = path.join(folder, name)
  writeFileSync(file, text, { mode })
  return file
}

const demoFile = path.resolve('examples/hut-hauler.build.json')
const sled = demo('quick-sled-puller')
const pattern = { format: 'pitchline-pattern', version: 1, name: 'demo', rows: [{ seconds: 1, speedKmh: 5 }] }
const space = { format: 'pitchline-space', version: 1 }
const aim = { figure: 'topSpeedMps', best: 'most' }

const buildWith = (entry: string, value: unknown, stored = plainBuild()) =>
  readStoredBuildValue(withEntry(stored, entry, value))

/** A space that reads, held against a demo build. */
function spaceWith(parts: object): Answer {
  const read = readSpaceValue({ ...space, vary: { 'pack.series': [6] }, aim, ...parts })
  return read.ok ? planOf(sled, read.value) : read
}

const logWith = (text: string): Answer => {
  const build = readBuild(bytesOf(JSON.stringify(plainBuild())))
  if (!build.ok) throw new Error('the fixture does not read')
  return logOf({ build: build.value, bytes: bytesOf(text), choice: {}, alarms: null })
}

/** A log that is refused for its size, without the memory for it: nothing but its length is looked at. */
function hugeLog(): Answer {
  const bytes = { length: tooManyBytes } as Uint8Array
  const text = new TextReader(bytes, {}).result()
  return 'code' in text ? { ok: false, mistakes: [text] } : { ok: true }
}

/** A disk that fails at one call with the operating system's code. */
function failing(call: keyof FileSystem, code: string): FileSystem {
  const fail = () => Promise.reject(Object.assign(new Error(code), { code }))
  return { ...diskFileSystem, [call]: fail }
}

const save = (disk: FileSystem, name: string, replaces: readonly string[] | 'anything' = 'anything') =>
  saveAtomically(disk, { file: path.join(folder, name), bytes: bytesOf('{}'), replaces })

const serviceOn = (disk: FileSystem) =>
  new FileService({
    disk,
    files: new OpenFiles(),
    outside: new OutsideChanges(disk, () => undefined),
    recent: new RecentFiles(disk, path.join(folder, 'recent.json')),
    show: () => undefined,
    used: () => undefined,
    saving: () => Promise.resolve(),
  })

async function openTwice(): Promise<Answer> {
  const service = serviceOn(diskFileSystem)
  const file = fileOf('open-twice.json', '{}')
  const first = await service.saveAs(1, file, asShown('{}'))
  const second = await service.saveAs(2, file, asShown('{}'))
  service.releaseAll(1)
  return first.ok ? second : { ok: true }
}

/** The bridge's answer where a handler throws: a bug of ours. */
async function throwing(): Promise<Answer> {
  vi.spyOn(console, 'error').mockImplementation(() => undefined)
  const listeners = new Map<string, (event: Asker, ...words: unknown[]) => Promise<unknown>>()
  const handlers = { recent: () => Promise.reject(new Error('made up')) } as unknown as Handlers
  receive({ handle: (channel, listener) => void listeners.set(channel, listener) }, handlers, () => true)
  const frame = { url: 'app://pitchline/index.html' }
  const asker = { sender: { id: 1, mainFrame: frame }, senderFrame: frame }
  return (await listeners.get(contract.recent.channel)?.(asker)) as Answer
}

const io = { out: () => undefined, err: () => undefined }

/** What a command line reports; its sentences are noted by the spies on the catalogue. */
async function commandLine(...words: readonly string[]): Promise<void> {
  await runCommandLine(words, commands, '0', io)
}

/** What a part of a small sweep is printed as. */
async function sweepPart(which: string): Promise<string> {
  let printed = ''
  const words = ['sweep', demoFile, 'vehicle.massKg', '20', '40', '4', '--part', which]
  await runCommandLine(words, commands, '0', { ...io, out: (text) => (printed += text) })
  return printed
}

async function mergeOf(...parts: readonly string[]): Promise<void> {
  const texts = await Promise.all(parts.map(sweepPart))
  await commandLine('merge', ...texts.map((text, at) => fileOf(`${at}.part`, text)))
}

/** Of each code something that provokes it: what it answers, or what it reports as a sentence. */
const provoked: Readonly<Record<MistakeCode, () => Answer | void | Promise<Answer | void>>> = {
  'empty-file': () => readStoredBuildText(''),
  'too-large': () => readBuild(new Uint8Array(2 ** 21)),
  'not-utf8': () => readBuild(Uint8Array.of(0x7b, 0xff)),
  'not-json': () => readStoredBuildText('{'),
  'too-deep': () => readStoredBuildText('['.repeat(1000)),
  'forbidden-key': () => readStoredBuildText('{"__proto__":{}}'),
  'duplicate-key': () => readStoredBuildText('{"name":"a","name":"b"}'),
  'wrong-format': () => readStoredBuildValue({ ...plainBuild(), format: 'other' }),
  'newer-version': () => buildWith('version', 99),
  missing: () => buildWith('pack.series', undefined),
  'unknown-key': () => readStoredBuildValue({ ...plainBuild(), colour: 'red' }),
  'out-of-range': () => buildWith('pack.series', 99),
  'not-a-number': () => buildWith('pack.series', 'six'),
  'not-text': () => buildWith('name', 7),
  'too-long': () => buildWith('name', 'a'.repeat(1000)),
  'not-one-of': () => buildWith('ground.model', 'ice rink'),
  'not-in-table': () => buildWith('track.tooth.material', 'cheese', sled),
  'not-a-list': () => buildWith('stages', 7),
  'not-an-object': () => readStoredBuildValue([]),
  'too-many': () => buildWith('accessories', Array(21).fill({ name: '', watts: 0 })),
  'path-not-in-file': () => buildWith('tolerances.stages.9.ratio', { plusMinus: 0.1, shape: 'uniform' }),
  'between-fields': () => buildWith('motor.poleCount', 3),
  'cannot-feed-accessories': () => buildWith('accessories', [{ name: 'winch', watts: 20_000 }]),
  'soil-not-positive': () =>
    readStoredBuildValue(withEntry(withEntry(soilBuild(), 'ground.soil.kc', -15), 'ground.soil.kphi', 99.9)),
  'no-such-file': () => commandLine('check', path.join(folder, 'nowhere.json')),
  'is-a-folder': () => commandLine('check', folder),
  'cannot-read': () => readWhole(failing('readFile', 'ELOOP'), demoFile),
  'cannot-write': () => save(failing('create', 'ENAMETOOLONG'), 'new.json'),
  'file-exists': () => commandLine('new', fileOf('taken.build.json', '{}')),
  'file-changed-outside': () => (
    fileOf('changed.json', 'other'),
    save(diskFileSystem, 'changed.json', ['0'])
  ),
  'file-gone': () => save(diskFileSystem, 'gone.json', ['0']),
  'file-open-elsewhere': openTwice,
  'file-read-only': () => (fileOf('kept.json', '{}', 0o444), save(diskFileSystem, 'kept.json')),
  'file-not-permitted': () => save(failing('create', 'EACCES'), 'new.json'),
  'file-in-use': () => save(failing('rename', 'EBUSY'), 'new.json'),
  'disk-full': () => save(failing('create', 'ENOSPC'), 'new.json'),
  'disk-trouble': () => save(failing('create', 'EIO'), 'new.json'),
  'disk-unconfirmed': () => save(failing('syncFolder', 'EIO'), 'new.json'),
  'request-refused': () => serviceOn(diskFileSystem).read(1, 'no handle of ours'),
  'own-fault': throwing,
  'stopped-early': () => void reportStopped(io, 'a search'),
  'input-twice': () => commandLine('search', '-', '-'),
  'unknown-option': () => commandLine('check', '--colour', demoFile),
  'unknown-command': () => commandLine('chek'),
  'missing-argument': () => commandLine('check'),
  'too-many-arguments': () => commandLine('check', 'a', 'b'),
  'option-not-understood': () => commandLine('uncertainty', '--part', 'nose', demoFile),
  'unknown-subject': () => commandLine('explain', demoFile, 'beauty'),
  'no-such-limit': () => commandLine('remedy', demoFile, 'beauty'),
  'not-a-pattern': () => readPatternValue({ ...pattern, format: 'other' }),
  'unknown-pattern-key': () => readPatternText(JSON.stringify({ ...pattern, colour: 'red' })),
  'unknown-pattern': () => commandLine('pattern', demoFile, 'to the moon'),
  'wrong-reading': () => readReadings('kv', bytesOf('{"rows":7}'), null),
  'not-a-space': () => readSpaceValue({ ...space, format: 'other' }),
  'unknown-space-key': () => spaceWith({ colour: 'red' }),
  'wrong-length': () => spaceWith({ owned: { none: [] }, vary: { 'pack.series': 'none' } }),
  'wrong-shape': () => spaceWith({ vary: { motor: 'any' } }),
  'cannot-vary': () => spaceWith({ vary: { 'no.such.entry': [1] } }),
  'listed-twice': () => spaceWith({ vary: { 'pack.series': [6, 6] } }),
  'unknown-list': () => spaceWith({ vary: { 'pack.series': 'missing' } }),
  'quantity-not-understood': () =>
    spaceWith({ hold: { figures: [{ figure: 'topSpeedMps', atLeast: '40 kg' }] } }),
  'no-bound': () => spaceWith({ hold: { figures: [{ figure: 'topSpeedMps' }] } }),
  'not-a-part': () => commandLine('merge', demoFile),
  'part-damaged': async () => commandLine('merge', fileOf('cut.part', (await sweepPart('1/2')).slice(0, 99))),
  'part-of-another-run': () => mergeOf('1/2', '2/3'),
  'part-twice': () => mergeOf('1/2', '1/2'),
  'part-missing': () => mergeOf('1/2'),
  'log-empty': () => logWith(' \n\n'),
  'log-binary': () => logWith('\u0001\u0002\u0003'),
  'log-too-big': hugeLog,
  'log-one-column': () => logWith('Time\n1\n2\n3\n'),
  'log-no-rows': () => logWith('Time,Rpm\nno,numbers\n'),
  'log-no-time': () => logWith('Rpm,Volts\n100,50\n200,50\n'),
  'log-no-values': () => logWith('Time,Colour depth\n1,2\n2,3\n'),
  'log-columns': () => readColumns(bytesOf('{"rate":-1}')),
  'log-alarms': () => readAlarms(bytesOf('{}')),
  'entry-not-understood': () => readEntry('many', 'length'),
  'entry-wrong-unit': () => readEntry('5 kg', 'length'),
  'entry-ambiguous': () => readEntry('1,234', 'length'),
}

const codes = Object.keys(catalogue) as MistakeCode[]
/** Codes whose sentence was asked for. */
let spoken = new Set<MistakeCode>()

beforeEach(() => {
  spoken = new Set()
  const table: Record<MistakeCode, (details: never) => string> = catalogue
  for (const code of codes) {
    const sentence = table[code]
    vi.spyOn(table, code).mockImplementation((details) => (spoken.add(code), sentence(details)))
  }
})
afterEach(() => vi.restoreAllMocks())

test.each(codes)('%s is raised by real code', async (code) => {
  const answer = await provoked[code]()
  const found = answer === undefined ? [...spoken] : (answer.mistakes ?? []).map((mistake) => mistake.code)
  expect(found).toContain(code)
})

test('every code of the catalogue has a row, and every row a code', () => {
  expect(Object.keys(provoked).toSorted()).toEqual(codes.toSorted())
})
