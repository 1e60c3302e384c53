import type { Build } from '../entries/schema.ts'
import type { LimitId } from '../limits/id.ts'
import { limitOf } from '../limits/table.ts'
import type { PatternRowPart } from '../machine/parts.ts'
import { formatText } from '../units/display.ts'
import type { QuantityKind, UnitSystem } from '../units/kinds.ts'
import type { DriveRun } from './result.ts'

/** A bound that a drive passed; by its RMS current where there is no moment. */
export interface Passed {
  readonly id: LimitId
  readonly label: string
  readonly kind: QuantityKind
  /** s; null where the RMS current of the whole drive is over a rating for long. */
  readonly at: number | null
  /** Place of the row that is driven then, from 0; null where there is no moment. */
  readonly row: number | null
  readonly allowed: number | null
  /** Whether it is a lowest value that was passed downwards. */
  readonly falls: boolean
  /** The most of it in the whole drive, of volts the least. */
  readonly reached: number | null
}

/** A temperature that a drive could not follow, and the entries that would let it. */
interface Unfollowed {
  /** "the winding’s temperature". */
  readonly words: string
  readonly needs: readonly string[]
}

/** What a drive could not watch for lack of entries: that nothing was passed says nothing of it. */
export function unfollowedOf({ windingEndC, controllerEndC }: DriveRun): readonly Unfollowed[] {
  const node = (part: string) => [`${part}.thermalResistanceKPerW`, `${part}.heatCapacityJPerK`]
  return [
    ...(windingEndC === null ? [{ words: 'the winding’s temperature', needs: node('motor') }] : []),
    ...(controllerEndC === null
      ? [{ words: 'the controller’s temperature', needs: node('controller') }]
      : []),
  ]
}

/** What a builder could change: in words, and the entry that it is. */
interface Change {
  readonly words: string
  readonly path: string
}

/**
 * The row of a pattern that is driven at a moment, from 0; the later one where two meet.
 *
 * @param seconds s from the start
 */
function rowAt(rows: readonly PatternRowPart[], seconds: number): number {
  let end = 0
  const at = rows.findIndex((row) => (end += row.seconds) > seconds)
  return at < 0 ? Math.max(0, rows.length - 1) : at
}

/** °C of the coldest coolant: a peak is the hottest. */
function coldestOf({ series }: DriveRun): number | null {
  const followed = series.flatMap(({ coolant }) => coolant ?? [])
  return followed.length === 0 ? null : Math.min(...followed)
}

/** Every bound that a drive passed, first moment first, then what its RMS currents are over. */
export function passedOf(run: DriveRun, rows: readonly PatternRowPart[]): readonly Passed[] {
  // Of "Winding, hottest in the pattern" the first: the ledger's pattern is not the one that is driven.
  const about = (id: LimitId) => {
    const { label = id, kind = 'none' } = limitOf(id) ?? {}
    return { label: label.split(', ')[0] ?? label, kind } as const
  }
  const moments = run.watched.flatMap(({ id, channel, allowed, minimum, passedAt }) =>
    passedAt === null
      ? []
      : [
          {
            id,
            ...about(id),
            at: passedAt,
            row: rowAt(rows, passedAt),
            allowed,
            falls: minimum,
            reached: minimum && channel === 'coolant' ? coldestOf(run) : (run.peaks[channel]?.value ?? null),
          },
        ],
  )
  const lasting = run.overContinuous.map((id) => ({
    id,
    ...about(id),
    at: null,
    row: null,
    allowed: null,
    falls: false,
    reached: id.startsWith('pack') ? run.packAmpsRms : run.motorAmpsRms,
  }))
  return [...moments.toSorted((one, other) => one.at - other.at), ...lasting]
}

/** "passes 120 °C after 6.9 min, in row 4, and reaches 148 °C". */
export function passedWords(passed: Passed, system: UnitSystem): string {
  const { at, row, allowed, falls, reached, kind } = passed
  const show = (value: number | null) => formatText(value, kind, system)
  if (at === null || row === null) return `is over by the RMS current of the whole drive, ${show(reached)}`
  const when = at === 0 ? 'at once' : `after ${formatText(at, 'time', system)}`
  return `${falls ? 'falls below' : 'passes'} ${show(allowed)} ${when}, in row ${row + 1}, and reaches ${show(reached)}`
}

/** Entries that move each bound, the one that a builder changes first in front. *Source:* common practice, no source. */
const changes: readonly (readonly [start: string, list: (build: Build) => readonly Change[]])[] = [
  [
    'motor.temperature',
    (build) => [
      ...reduction(build, 'more reduction, so that the same pull takes fewer amps'),
      { words: 'a lower current limit', path: 'controller.currentLimitAmps' },
      build.cooling === undefined
        ? { words: 'liquid cooling', path: 'cooling.flowLPerMin' }
        : { words: 'more flow', path: 'cooling.flowLPerMin' },
      { words: 'two motors in place of one', path: 'motor.count' },
    ],
  ],
  [
    'controller.temperature',
    (build) => [
      { words: 'a lower current limit', path: 'controller.currentLimitAmps' },
      ...reduction(build, 'more reduction, so that the same pull takes fewer amps'),
      { words: 'a controller of less resistance', path: 'controller.resistanceMilliohm' },
    ],
  ],
  ['motor.loaded-rpm', (build) => slower(build)],
  ['controller.electrical-rpm', (build) => slower(build)],
  [
    'cooling.boiling',
    () => [
      { words: 'a larger radiator', path: 'cooling.radiatorWPerK' },
      { words: 'more flow', path: 'cooling.flowLPerMin' },
      { words: 'more coolant, which warms more slowly', path: 'cooling.tankLitres' },
      { words: 'a cap that holds more pressure', path: 'cooling.capKpa' },
    ],
  ],
  [
    'cooling.freezing',
    () => [
      { words: 'a mix with more glycol', path: 'cooling.coolant' },
      { words: 'the machine kept above freezing before the drive', path: 'ground.airTemperatureC' },
    ],
  ],
  [
    'pack.floor-voltage',
    () => [
      { words: 'more cells in parallel, which sag less', path: 'pack.parallel' },
      { words: 'a lower current limit', path: 'controller.currentLimitAmps' },
      { words: 'a warm pack', path: 'service.packTemperatureC' },
    ],
  ],
  [
    'pack.',
    (build) => [
      { words: 'a lower current limit', path: 'controller.currentLimitAmps' },
      { words: 'more cells in parallel', path: 'pack.parallel' },
      ...reduction(build, 'more reduction'),
    ],
  ],
  [
    '',
    (build) => [
      { words: 'a lower current limit', path: 'controller.currentLimitAmps' },
      ...reduction(build, 'more reduction, so that the same pull takes fewer amps'),
    ],
  ],
]

function reduction({ stages }: Build, words: string): readonly Change[] {
  const [first] = stages
  if (first === undefined) return []
  return [{ words, path: first.kind === 'fixed' ? 'stages.0.ratio' : 'stages.0.drivenTeeth' }]
}

function slower(build: Build): readonly Change[] {
  return [
    { words: 'a lower throttle cap', path: 'controller.throttleCapPercent' },
    { words: 'a motor of lower Kv', path: 'motor.kvRpmPerVolt' },
    { words: 'fewer cells in series', path: 'pack.series' },
    ...reduction(build, 'less reduction, where a speed is asked for'),
  ]
}

/** What to change where a drive passes a bound, besides its row: entries of the build. */
export function changesFor(id: LimitId, build: Build): readonly Change[] {
  return changes.find(([start]) => id.startsWith(start))?.[1](build) ?? []
}
