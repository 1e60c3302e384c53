/** What version 2 of the model computes in another way than these builds of version 1 were made for, by name, with the reason. */
type Amended = Readonly<Record<string, string>>

const bursts = 'the greatest currents are those that the ground lets happen, not those of a wheel that can’t turn'
const cold = 'cold cells give less of their charge'
const heat = 'of the drive pattern, its heat, bursts and brakes'
const pattern = 'the load over a run (a share of the current at top speed) is replaced by the drive pattern'

/** Figures that owe other values now, or none. */
export const amendedFigures: Amended = {
  steadyMotorC: pattern,
  steadyControllerC: pattern,
  coolantRiseK: pattern,
  busRippleVolts: bursts,
  secondsToMotorLimit: pattern,
  cruiseHalfTopMinutes: cold,
  cruiseHalfTopKilometres: cold,
}

/** Figures that version 1 did not have. */
export const newFigures: Amended = {
  steadyWindingC: heat,
  steadyCaseC: heat,
  caseAtLimitC: heat,
  coolantFeedC: heat,
  coolantHotC: heat,
  steadyControllerAtLeastC: heat,
  holdMotorAmps: heat,
  secondsToHoldLimit: heat,
  secondsToLaunchLimit: heat,
  secondsToPivotLimit: heat,
  caseHoldLimitC: heat,
  caseLaunchLimitC: heat,
  casePivotLimitC: heat,
  labelMotorC: heat,
  coldFlowLPerMin: heat,
  packHeatWatts: heat,
  packEndC: heat,
  patternMotorAmpsRms: heat,
  patternPackAmpsRms: heat,
  patternPackAmpsMean: heat,
  patternIronWatts: heat,
  patternCopperWatts: heat,
  controllerLossWatts: heat,
  patternTurnSeconds: heat,
  patternMeanSpeedMps: heat,
  patternMinutes: heat,
  patternKilometres: heat,
  patternWhPerKm: heat,
  packUsableMah: heat,
  burstMotorAmps: heat,
  burstPackAmps: heat,
  burstPackVolts: heat,
  spinUpMotorAmps: heat,
  spinUpSeconds: heat,
  brakeMotorAmps: heat,
  brakeChargeAmps: heat,
  brakePackVolts: heat,
  creepMps: heat,
  stopMetres: heat,
  stopSeconds: heat,
  stopEnergyBackJ: heat,
  stopDownhillMetres: heat,
  rippleAmps: heat,
  rippleWorstAmps: heat,
  motorRippleAmps: heat,
}

/** Limits that owe other values now, or are gone. */
export const amendedLimits: Amended = {
  'motor.current-burst': bursts,
  'controller.current-burst': bursts,
  'pack.current-burst': bursts,
  'pack.floor-voltage': bursts,
  'motor.current-continuous': pattern,
  'controller.current-continuous': pattern,
  'pack.current-continuous': pattern,
  'motor.temperature': pattern,
  'controller.temperature': pattern,
}

/** Limits that version 1 did not have; a number is written n. */
export const newLimits: Amended = {
  'motor.burst-heat': heat,
  'controller.over-volts': heat,
  'pack.spin-up-volts': heat,
  'pack.charge-volts': heat,
  'pack.charge-current': heat,
  'pack.cold': heat,
  'pack.temperature': heat,
  'cooling.boiling': heat,
  'cooling.freezing': heat,
  'cooling.warming': heat,
  'vehicle.brake-hold': heat,
  'vehicle.park': heat,
}

/** The id of a limit with the number of its reduction or wire as n. */
export function withoutNumber(id: string): string {
  return id.replace(/\.\d+\./, '.n.')
}
