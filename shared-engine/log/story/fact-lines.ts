import { formatText } from '../../units/display.ts'
import type { QuantityKind, UnitSystem } from '../../units/kinds.ts'
import type { LogFacts } from '../facts/facts.ts'
import type { Moment } from '../facts/moments.ts'

const peakLabels: Readonly<Record<string, readonly [label: string, kind: QuantityKind]>> = {
  rpm: ['Most rpm', 'rpm'],
  amps: ['Most pack current', 'amps'],
  motorAmps: ['Most logged current of one motor', 'amps'],
  motorC: ['Hottest at the motor’s sensor', 'temperature'],
  controllerC: ['Hottest controller', 'temperature'],
  coolantC: ['Hottest coolant', 'temperature'],
  speed: ['Most logged speed', 'speed'],
  volts: ['Most pack volts', 'volts'],
  leastVolts: ['Least pack volts', 'volts'],
  leastCellVolts: ['Least volts of a cell', 'volts'],
}

const mostLabels: Readonly<Record<string, readonly [label: string, kind: QuantityKind]>> = {
  motorAmps: ['Most current of one motor', 'amps'],
  torqueNm: ['Most torque of one motor', 'torque'],
  forcePerLoopN: ['Most pull of one loop', 'force'],
  loopTensionN: ['Most tension in one loop', 'force'],
  toothN: ['Most on a tooth', 'force'],
}

const minutesWords = {
  counter: 'the logged counter',
  amps: 'the pack’s amps',
  'rest-volts': 'the resting volts',
} as const

/** The facts of a log as lines of label and value; what does not exist is left out. */
export function factLines(facts: LogFacts, system: UnitSystem): readonly (readonly [string, string])[] {
  const lines: (readonly [string, string])[] = []
  const shown = (value: number, kind: QuantityKind) => formatText(value, kind, system)
  const put = (label: string, value: number | null, kind: QuantityKind, more = '') => {
    if (value !== null) lines.push([label, `${shown(value, kind)}${more}`])
  }
  const at = (found: Moment | null) =>
    found === null
      ? ''
      : `  at ${found.t.toFixed(1)} s${found.segment > 1 ? ` of segment ${found.segment}` : ''}`
  put('Distance by the rpm', facts.distanceM, 'distance', `  in ${shown(facts.coveredSeconds, 'time')}`)
  put('Distance by the logged speed', facts.loggedDistanceM, 'distance')
  put('Top speed by the rpm', facts.topSpeedMps?.value ?? null, 'speed', at(facts.topSpeedMps))
  for (const [name, found] of Object.entries(facts.peaks)) {
    const [label, kind] = peakLabels[name] ?? [name, 'none']
    put(label, found.value, kind, at(found))
  }
  for (const [name, found] of Object.entries(facts.most) as [string, Moment | null][]) {
    const [label, kind] = mostLabels[name] ?? [name, 'none']
    put(label, found?.value ?? null, kind, at(found))
  }
  put(
    'Slip',
    facts.slip?.median ?? null,
    'fraction',
    `  median of ${facts.slip?.samples ?? 0} steady samples`,
  )
  put('Charge used, counted', facts.chargeCCounted, 'charge')
  put('Charge used, by the amps', facts.chargeCIntegrated, 'charge')
  put('Energy used, counted', facts.energyJCounted, 'energy')
  put('Energy used, by volts and amps', facts.energyJIntegrated, 'energy')
  if (facts.whPerKm !== null)
    lines.push(['Energy for a kilometre', `${shown(facts.whPerKm, 'none')}\u202FW·h`])
  put('Pack resistance', facts.packOhm?.value ?? null, 'ohms', spreadOf(facts, system))
  put('RMS current of one motor', facts.rmsMotorAmps, 'amps', loadOf(facts, system))
  put(
    'Charge left would last',
    facts.minutesLeft,
    'minutes',
    facts.minutesFrom === null ? '' : `  by ${minutesWords[facts.minutesFrom]}`,
  )
  return lines
}

function spreadOf({ packOhm }: LogFacts, system: UnitSystem): string {
  if (packOhm === null) return ''
  const shown = (value: number) => formatText(value, 'ohms', system)
  return `  ± ${shown(packOhm.standardError)} (standard error); the build says ${shown(packOhm.model)}`
}

const loadOf = ({ loadPercent }: LogFacts, system: UnitSystem) =>
  loadPercent === null ? '' : `, ${formatText(loadPercent / 100, 'fraction', system)} of what top speed takes`
