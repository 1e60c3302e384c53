import type { Mistake } from '../mistakes/mistake.ts'
import { cellResistanceFactor, type ChemistryId, openCircuitVolts } from '../reference/chemistry.ts'
import { type EntryReader, entryReaderOf, shownEntry } from './entry-reader.ts'
import { allowedOf, fieldOf } from './fields.ts'
import { evidenceRules } from './rules-evidence.ts'
import { jointRules } from './rules-joints.ts'
import { stageRules } from './rules-stages.ts'
import { wiringRules } from './rules-wiring.ts'
import { broken, type Rule } from './rule.ts'

const loadBelowTip: Rule = (entries) => {
  const load = entries.number('track.tooth.loadHeightMm')
  const height = entries.number('track.tooth.heightMm')
  if (load === undefined || height === undefined || load < height) return []
  return broken(
    'track.tooth.loadHeightMm',
    load,
    `below track.tooth.heightMm, which is ${shownEntry('track.tooth.heightMm', height)}`,
  )
}

const toothEngaged: Rule = (entries) => {
  const teeth = entries.number('track.sprocketTeeth')
  const wrap = entries.number('track.wrapDegrees')
  if (teeth === undefined || wrap === undefined) return []
  // The count of engaged teeth (`docs/model.md` §6), with its allowance for a whole number that rounding has cut short.
  if (Math.floor((teeth * wrap) / 360 + 1e-9) >= 1) return []
  const least = shownEntry('track.wrapDegrees', 360 / teeth)
  return broken(
    'track.wrapDegrees',
    wrap,
    `from ${least}: less leaves none of the ${teeth} teeth of track.sprocketTeeth engaged`,
  )
}

const freeRunPossible: Rule = (entries) => {
  const amps = entries.si('motor.noLoadAmps')
  const ohms = entries.si('motor.resistanceMilliohm')
  const volts = entries.si('motor.noLoadVolts')
  if (amps === undefined || ohms === undefined || volts === undefined || amps * ohms < volts) return []
  const most = shownEntry('motor.noLoadAmps', volts / ohms)
  return broken('motor.noLoadAmps', amps, `below ${most}: motor.noLoadVolts over motor.resistanceMilliohm`)
}

const polesInPairs: Rule = (entries) => {
  const poles = entries.number('motor.poleCount')
  return poles === undefined || poles % 2 === 0
    ? []
    : broken('motor.poleCount', poles, 'an even number: poles come in pairs')
}

const pitchErrorSmall: Rule = (entries) => {
  const error = entries.number('track.pitchErrorMm')
  const pitch = entries.number('track.pitchMm')
  if (error === undefined || pitch === undefined || Math.abs(error) < pitch / 10) return []
  return broken(
    'track.pitchErrorMm',
    error,
    `less than a tenth of track.pitchMm either way: ${shownEntry('track.pitchMm', pitch / 10)}`,
  )
}

const reserveBelowCharge: Rule = (entries) => {
  const reserve = entries.number('service.reservePercent')
  const charge = entries.number('service.stateOfChargePercent')
  if (reserve === undefined || charge === undefined || reserve < charge) return []
  return broken('service.reservePercent', reserve, `below service.stateOfChargePercent, which is ${charge}%`)
}

const soilHasPatch: Rule = (entries) => {
  if (entries.word('ground.model') !== 'soil') return []
  return ['vehicle.contactLengthMm', 'vehicle.contactWidthMm']
    .filter((path) => entries.raw(path) === undefined)
    .map((path) => {
      const field = fieldOf(path)
      const range = field === undefined ? '' : allowedOf(field)
      return { code: 'missing', path, value: '', allowed: `${range}, since ground.model is soil`, kept: '' }
    })
}

const soilHolds: Rule = (entries) => {
  const length = entries.si('vehicle.contactLengthMm')
  const width = entries.si('vehicle.contactWidthMm')
  const cohesive = entries.number('ground.soil.kc')
  const frictional = entries.number('ground.soil.kphi')
  if (entries.word('ground.model') !== 'soil' || length === undefined || width === undefined) return []
  if (cohesive === undefined || frictional === undefined) return []
  const stiffness = cohesive / Math.min(length, width) + frictional
  if (stiffness > 0) return []
  const value = shownEntry('ground.soil.kphi', stiffness)
  const allowed = `above 0: ground.soil.kc over the smaller of vehicle.contactLengthMm and vehicle.contactWidthMm, plus ground.soil.kphi`
  return [{ code: 'soil-not-positive', path: 'ground.soil.kc', value, allowed, kept: '' }]
}

/** What an accessory's power is divided by: the efficiency of the supply that it hangs behind, else its converter's. */
function supplyEfficiency(entries: EntryReader, accessory: string): number | undefined {
  if (entries.raw(`${accessory}.stepDown`) === undefined)
    return entries.si(`${accessory}.converterEfficiencyPercent`)
  const supply = entries.number(`${accessory}.stepDown`)
  if (supply === undefined || supply >= entries.length('stepDowns')) return undefined
  return entries.si(`stepDowns.${supply}.efficiencyPercent`)
}

/** Power that all accessories and the pump take from the pack, W; undefined where one of them is unsound. */
function accessoryWatts(entries: EntryReader): number | undefined {
  let sum = entries.si('cooling.pumpWatts')
  for (let at = 0; at < entries.length('accessories') && sum !== undefined; at += 1) {
    const watts = entries.si(`accessories.${at}.watts`)
    const efficiency = supplyEfficiency(entries, `accessories.${at}`)
    sum = watts === undefined || efficiency === undefined ? undefined : sum + watts / efficiency
  }
  return sum
}

/** The most power that a pack gives at all, into a load of its own resistance: `V_oc²/(4 R_b)`, W. */
function mostPackWatts(entries: EntryReader): number | undefined {
  const chemistry = entries.word('pack.chemistry') as ChemistryId | undefined
  const [series, parallel] = [entries.number('pack.series'), entries.number('pack.parallel')]
  const [cell, wiring] = [
    entries.si('pack.cellResistanceMilliohm'),
    entries.si('pack.wiringResistanceMilliohm'),
  ]
  const [charge, temperature] = [
    entries.si('service.stateOfChargePercent'),
    entries.si('service.packTemperatureC'),
  ]
  if (chemistry === undefined || series === undefined || parallel === undefined || cell === undefined)
    return undefined
  if (wiring === undefined || charge === undefined || temperature === undefined) return undefined
  const volts = series * openCircuitVolts(chemistry, charge)
  const ohms = (series * cell * cellResistanceFactor(temperature)) / parallel + wiring
  return volts ** 2 / (4 * ohms)
}

const packFeedsAccessories: Rule = (entries) => {
  const [asked, most] = [accessoryWatts(entries), mostPackWatts(entries)]
  if (asked === undefined || most === undefined || asked <= most) return []
  const allowed = `up to ${shownEntry('accessories.0.watts', most)}, the most that pack.series and pack.cellResistanceMilliohm can give`
  const [listed, pumped] = [entries.length('accessories') > 0, entries.si('cooling.pumpWatts') !== 0]
  const watts = shownEntry('accessories.0.watts', asked)
  return [
    {
      code: 'cannot-feed-accessories',
      path: listed ? 'accessories' : 'cooling.pumpWatts',
      value: listed && pumped ? `${watts} with cooling.pumpWatts` : watts,
      allowed,
      kept: '',
    },
  ]
}

/** Every finer rule between entries, in the order in which they are reported. */
export const rules: readonly Rule[] = [
  polesInPairs,
  freeRunPossible,
  ...stageRules,
  ...jointRules,
  toothEngaged,
  pitchErrorSmall,
  loadBelowTip,
  soilHasPatch,
  soilHolds,
  reserveBelowCharge,
  packFeedsAccessories,
  ...wiringRules,
  ...evidenceRules,
]

/**
 * What is wrong between the entries of a build. A rule is asked only where the entries that it needs are sound in
 * themselves, so that all mistakes of a file are reported at once and none twice.
 */
export function brokenRulesOf(build: unknown): Mistake[] {
  const entries = entryReaderOf(build)
  return rules.flatMap((rule) => rule(entries))
}
