import type { Checked } from '../check.ts'
import type { LimitId } from '../limits/id.ts'
import { format, formatText } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { Jams } from './jams.ts'

/** What a mishap that is over breaks, from which speed on, and what would hold. */
interface Mishap {
  readonly limit: LimitId
  /** "breaks the loop". */
  readonly breaks: string
  /** Whether the loop is jammed, runs free, or neither. */
  readonly kind: 'jam' | 'free' | 'other'
  /** m/s of the belt from which on it breaks; 0: at any; null where the machine runs free. */
  readonly aboveSpeed: number | null
  /** N·m at the sprocket's shaft: a limiter set there holds at any speed; null where none is known to. */
  readonly limiterTorque: number | null
  /** Whether ordinary use asks more of the sprocket's shaft than that. */
  readonly slipsInUse: boolean
}

const ofTrack: Readonly<Record<string, string>> = {
  'track.stop-shear': 'shears the drive teeth off',
  'track.stop-bending': 'breaks the drive teeth at their root',
  'track.stop-bearing': 'crushes the drive teeth',
  'track.stop-tension': 'breaks the loop',
  'track.stop-shaft': 'breaks the sprocket’s shaft',
  'track.stop-joint': 'turns the sprocket on its shaft',
  'motor.stop-joint': 'turns the pinion on the motor’s shaft',
  'track.burst-speed': 'tears the loop by its own mass',
  'track.lift-off-free': 'lifts the loop off its wheels',
  'track.mesh-free': 'lets the loop stand off until its teeth skip',
  'track.climb-free': 'lets the teeth climb out of the sprocket',
}

const ofStage: Readonly<Record<string, (number: string) => string>> = {
  'stop-bending': (number) => `breaks the gear teeth of stage ${number}`,
  'stop-tension': (number) => `breaks the chain of stage ${number}`,
  'stop-shaft': (number) => `breaks the driven shaft of stage ${number}`,
  'stop-joint': (number) => `turns the wheel on the driven shaft of stage ${number}`,
}

/** Mishaps that no jam and no free run bring about, each a sentence. */
const others: Readonly<Record<string, (number: string) => string>> = {
  'wire.protected': (number) => `In a short circuit wire ${number} burns before the fuse opens.`,
  'vehicle.park': () => 'The wheel brake doesn’t hold the machine on the slope.',
}

/** The sentence of such a mishap; undefined for a jam or a free run. */
export function otherMishap(id: LimitId): string | undefined {
  const number = /\.(\d+)\./.exec(id)?.[1] ?? ''
  return others[id.replace(/\.\d+\./, '.')]?.(number)
}

/** What passing a limit of a mishap breaks. */
export function breaksOf(id: LimitId): string {
  const [part, number = '', name = ''] = id.split('.')
  return (part === 'stage' ? ofStage[name]?.(number) : ofTrack[id]) ?? 'breaks something'
}

/** The limits of teeth and loop, which a limiter next to the sprocket guards. */
const guarded: ReadonlySet<string> = new Set([
  'track.stop-shear',
  'track.stop-bending',
  'track.stop-bearing',
  'track.stop-tension',
])

/**
 * Mishaps that are over, in the ledger's order: what each breaks, from which speed on, and the limiter that would hold.
 *
 * @param checked a build worked out
 * *Source:* the stop of `docs/model.md` §6 at every speed up to the one judged, by bisection on the limit's margin.
 */
export function mishapsOf(checked: Checked): readonly Mishap[] {
  const over = checked.limits.filter(({ group, standing }) => group === 'mishap' && standing === 'over')
  if (over.length === 0) return []
  const jams = new Jams(checked.machine)
  return over.map((row) => {
    const isJam = row.case === 'stop' || row.case === 'stop-free'
    const limiter = guarded.has(row.id) ? checked.figures.limiterHoldsNm : null
    return {
      limit: row.id,
      breaks: breaksOf(row.id),
      kind: isJam ? 'jam' : otherMishap(row.id) === undefined ? 'free' : 'other',
      aboveSpeed: isJam ? jams.speedAt(row) : null,
      limiterTorque: limiter,
      slipsInUse: limiter !== null && limiter <= ordinaryTorque(checked),
    }
  })
}

/** N·m that ordinary use asks of one motor's share of the sprocket's shaft, no limiter slipping. */
function ordinaryTorque({ machine, evaluation: e }: Checked): number {
  const { track, motor, stages } = machine
  const scale = (track.radius * track.count) / motor.count
  const held = (e.pulls.gripUncapped[stages.length] ?? 0) * scale
  const top = e.top.exists ? e.topLoad.force * scale : 0
  return Math.max(held, top)
}

/** "A jam above 10 km/h breaks the loop; a limiter set at 6 N·m at the sprocket would hold." */
export function mishapSentence(mishap: Mishap, system: UnitSystem): string {
  const { limit, breaks, kind, aboveSpeed, limiterTorque, slipsInUse } = mishap
  const other = otherMishap(limit)
  if (other !== undefined) return other
  if (kind === 'free') return `Running free at full charge ${breaks}.`
  const speed = formatText(aboveSpeed, 'speed', system)
  const jam = aboveSpeed === 0 ? 'A jam at any speed' : `A jam above ${speed}`
  return `${jam} ${breaks}${limiterWords(limiterTorque, slipsInUse, system)}.`
}

function limiterWords(torque: number | null, slipsInUse: boolean, system: UnitSystem): string {
  if (torque === null || !(torque > 0)) return ''
  const { text, unit } = format(torque, 'torque', system)
  const setting = `${text} ${unit}`
  return slipsInUse
    ? `; a limiter that holds it, set at ${setting} at the sprocket, would slip in ordinary use`
    : `; a limiter set at ${setting} at the sprocket would hold`
}
