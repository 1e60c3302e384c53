import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { kilo, milli, secondsPerHour, secondsPerMinute } from '../units/factors.ts'
import { figureRows } from './figure.ts'

/** The drive pattern: its means, and how far a charge goes. */
export class PatternFigures {
  patternMotorAmpsRms = NaN
  patternPackAmpsRms = NaN
  patternPackAmpsMean = NaN
  patternIronWatts = NaN
  patternCopperWatts = NaN
  controllerLossWatts = NaN
  patternTurnSeconds = NaN
  patternMeanSpeedMps = NaN
  patternMinutes = NaN
  patternKilometres = NaN
  patternWhPerKm = NaN
  packUsableMah = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setPatternFigures(values: PatternFigures, e: Evaluation, machine: Machine): void {
  const { pattern } = e
  values.patternMotorAmpsRms = pattern.motorAmpsRms
  values.patternPackAmpsRms = pattern.packAmpsRms
  values.patternPackAmpsMean = pattern.packAmpsMean
  values.patternIronWatts = pattern.ironLoss
  values.patternCopperWatts = pattern.copperLoss
  values.controllerLossWatts = pattern.controllerLoss
  values.patternTurnSeconds = pattern.turnSeconds
  values.patternMeanSpeedMps = pattern.speed
  values.patternMinutes = pattern.life / secondsPerMinute
  values.patternKilometres = pattern.reach / kilo
  values.patternWhPerKm = (pattern.energyPerMetre * kilo) / secondsPerHour
  values.packUsableMah = machine.pack.usable / (secondsPerHour * milli)
}

export const patternFigures = figureRows(new PatternFigures(), setPatternFigures, {
  patternMotorAmpsRms: ['Motor current through the pattern, RMS', 'amps'],
  patternPackAmpsRms: ['Pack current through the pattern, RMS', 'amps'],
  patternPackAmpsMean: ['Pack current through the pattern, mean', 'amps'],
  patternIronWatts: ['Iron loss of one motor', 'watts'],
  patternCopperWatts: ['Copper loss of one motor', 'watts'],
  controllerLossWatts: ['Loss of one controller', 'watts'],
  patternTurnSeconds: ['Pivot turns in one round', 'duration'],
  patternMeanSpeedMps: ['Mean speed of the pattern', 'speed'],
  patternMinutes: ['Time on one charge', 'minutes'],
  patternKilometres: ['Distance on one charge', 'kilometres'],
  patternWhPerKm: ['Energy for the way', 'wattHoursPerKilometre'],
  packUsableMah: ['Charge down to the reserve', 'milliampereHours'],
})
