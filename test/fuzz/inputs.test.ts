import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'
import { alarmRows } from '../../shared-engine/alarms/rows.ts'
import { check } from '../../shared-engine/check.ts'
import { readPattern } from '../../shared-engine/drive/read.ts'
import { completeBuild, readBuild, readStoredBuild } from '../../shared-engine/entries/read.ts'
import { writeBuild } from '../../shared-engine/entries/write.ts'
import { readChannels } from '../../shared-engine/fit/read.ts'
import { readColumns } from '../../shared-engine/log/columns/choice.ts'
import { readAlarms } from '../../shared-engine/log/facts/alarms.ts'
import { measure } from '../../shared-engine/measure/measure.ts'
import { readReadings } from '../../shared-engine/measure/read.ts'
import { sentenceOf } from '../../shared-engine/mistakes/catalogue.ts'
import type { Mistake, Result } from '../../shared-engine/mistakes/mistake.ts'
import { planOf } from '../../shared-engine/search/space.ts'
import { readSpace } from '../../shared-engine/search/space-read.ts'
import { fullBuild } from '../fixtures/build/plain.ts'
import { fuzzed, numbersThatAreNone, seedsOf, spoiltJson } from './spoil.ts'

// Every file that a person can open, spoilt at random: read or refused with a sentence for each mistake, and what is
// read gives no number that is none. The originals are demo files and invented.

const root = path.resolve(import.meta.dirname, '../..')
const example = (name: string) => readFileSync(path.join(root, 'examples', name))
const json = (value: unknown) => new TextEncoder().encode(JSON.stringify(value))

const names = ['hut-hauler', 'culvert-crawler', 'quick-sled-puller'] as const
const builds = [
  ...names.map((name) => example(`${name}.build.json`)),
  new TextEncoder().encode(writeBuild(fullBuild())),
]

/** What is wrong with an answer, nothing where it is as it should be. */
function troublesOf<T>(read: Result<T>, look: (value: T) => readonly string[] = () => []): readonly string[] {
  if (read.ok) return look(read.value)
  if (read.mistakes.length === 0) return ['refused without a word']
  return read.mistakes.flatMap((mistake: Mistake) => {
    const sentence = sentenceOf(mistake)
    return /^\P{Cc}+\.$/u.test(sentence) ? [] : [`said ${JSON.stringify(sentence)}`]
  })
}

const sled = readStoredBuild(example('quick-sled-puller.build.json'))
if (!sled.ok) throw new Error('the demo build is not read')

interface Kind {
  readonly name: string
  readonly originals: readonly Uint8Array[]
  readonly isRead: (bytes: Uint8Array) => boolean
  readonly troubles: (bytes: Uint8Array) => readonly string[]
}

function kindOf<T>(
  name: string,
  originals: readonly Uint8Array[],
  read: (bytes: Uint8Array) => Result<T>,
  look: (value: T) => readonly string[] = numbersThatAreNone,
): Kind {
  return {
    name,
    originals,
    isRead: (bytes) => read(bytes).ok,
    troubles: (bytes) => troublesOf(read(bytes), look),
  }
}

const ready = completeBuild(sled.value)
const columns = {
  delimiter: ';',
  decimal: ',',
  rate: 5,
  rpmFactor: 7,
  columns: { Zeit: { channel: 'time', factor: 0.001, offset: -1 }, 2: { channel: 'rpm' } },
}
const alarm = {
  id: 'rpm',
  channel: 'rpm',
  direction: 'above',
  value: 3e4,
  hold: 1,
  hysteresis: 500,
  limit: 4e4,
}
const channels = {
  format: 'pitchline-channels',
  version: 1,
  segments: [{ channels: { seconds: [0, 0.1, 0.2], motorRpm: [0, 900, null] } }],
}

const kinds: readonly Kind[] = [
  kindOf('builds', builds, readBuild, (build) => {
    const checked = check(build)
    const { figures, limits, stages } = checked
    return numbersThatAreNone({ figures, limits, stages, alarms: alarmRows(checked) })
  }),
  kindOf(
    'spaces',
    names.map((name) => example(`${name}.space.json`)),
    readSpace,
    (space) => troublesOf(planOf(sled.value, space), ({ total }) => numbersThatAreNone({ total })),
  ),
  kindOf(
    'drive patterns',
    names.map((name) => example(`${name}.pattern.json`)),
    readPattern,
  ),
  kindOf(
    'readings',
    [example('sled.readings.json')],
    (bytes) => readReadings('weigh', bytes, ready),
    (readings) => troublesOf(measure(readings, ready), numbersThatAreNone),
  ),
  kindOf('choices of columns', [json(columns)], readColumns),
  kindOf('alarms to replay', [json([alarm])], readAlarms),
  kindOf('channels to fit', [json(channels)], readChannels),
]

it.each(kinds)('the $name that are spoilt are sound before', ({ originals, isRead, troubles }) => {
  expect(originals.map(isRead)).not.toContain(false)
  expect(originals.flatMap(troubles)).toEqual([])
})

it.each(kinds)(
  `${fuzzed} spoilt $name are read or refused in sentences, and give no number that is none`,
  ({ originals, troubles }) => {
    const found: string[] = []
    for (const seed of seedsOf(fuzzed)) {
      const bytes = spoiltJson(originals[seed % originals.length] ?? new Uint8Array(), seed)
      try {
        found.push(...troubles(bytes).map((trouble) => `${seed}: ${trouble}`))
      } catch (thrown) {
        found.push(`${seed}: ${String(thrown)}`)
      }
    }
    expect(found).toEqual([])
  },
  60_000 + 100 * fuzzed,
)
