/** What version 2 of the model computes in another way than these builds of version 1 were made for, by name, with the reason. */
type Amended = Readonly<Record<string, string>>

const bursts = 'the greatest currents are those that the ground lets happen, not those of a wheel that can’t turn'
const cold = 'cold cells give less of their charge'
const heat = 'of the drive pattern, its heat, bursts and brakes'
const pattern = 'the load over a run (a share of the current at top speed) is replaced by the drive pattern'
const jam = 'version 1 judged no jam'
const loop = 'version 1 knew no tensioner and no temperature of the loop'

const lifted = 'with the front up all weight is on the tracks: the ground is that of a lifted machine'
const cohesion = 'cohesion bears half of the weight at most, c′ = min(c, p/2): less grip of a light machine on soil'

/** Figures that owe other values now, or none. */
export const amendedFigures: Amended = {
  steadyMotorC: pattern,
  steadyControllerC: pattern,
  coolantRiseK: pattern,
  busRippleVolts: bursts,
  secondsToMotorLimit: pattern,
  cruiseHalfTopMinutes: cold,
  cruiseHalfTopKilometres: cold,
  frontLiftThrustN: lifted,
  frontLiftThrottlePercent: lifted,
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
  jamStiffnessNPerM: jam,
  jamMassKg: jam,
  jamForceN: jam,
  jamFreeForceN: jam,
  jamBreakForceN: jam,
  jamBreakBeltSpeedMps: jam,
  limiterHoldsNm: jam,
  loopPretensionN: loop,
  pitchErrorM: loop,
  liftOffBeltSpeedMps: loop,
  liftOffMotorRpm: loop,
  loopGrowthFreeM: loop,
  cgHeightM: 'the centre of mass of machine and load',
  cgAheadM: 'the centre of mass of machine and load',
  weightTransferN: 'thrust moves weight from the skis to the tracks',
  spinUpLiftNm: 'loops that spin up turn the machine over backwards',
  spinUpLiftSeconds: 'loops that spin up turn the machine over backwards',
  tipBackDegrees: 'slopes on which it falls over',
  tipSideDegrees: 'slopes on which it falls over',
  soilPressurePa: 'the pressure that decides how much cohesion counts',
}

/** Of builds on soil alone. */
export const amendedFiguresOnSoil: Amended = {
  gripThrustN: cohesion,
  topSpeedMps: cohesion,
  topBeltSpeedMps: cohesion,
  topMotorRpm: cohesion,
  topMotorAmps: cohesion,
  topPackAmps: cohesion,
  topPackVolts: cohesion,
  topMotorEfficiency: cohesion,
  topOverallEfficiency: cohesion,
  topSlip: cohesion,
  peakAccelerationMps2: cohesion,
  secondsToHalfTop: cohesion,
  secondsTo80Top: cohesion,
  metresTo80Top: cohesion,
  busRippleVolts: cohesion,
  cruiseHalfTopPackAmps: cohesion,
  cruiseHalfTopMinutes: cohesion,
  cruiseHalfTopKilometres: cohesion,
}

/** Of builds on soil alone. */
export const amendedLimitsOnSoil: Amended = {
  'motor.loaded-rpm': cohesion,
  'vehicle.start': cohesion,
  'vehicle.pivot-turn': cohesion,
  'pack.current-burst': cohesion,
  'pack.floor-voltage': cohesion,
  'stage.n.tension': cohesion,
  'stage.n.power': cohesion,
}

/** Limits that owe other values now, or are gone; a number is written n. */
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
  'stage.n.interference': 'a note with the price and the cure of undercut stands in its place',
  'stage.n.contact-ratio': 'no tip counts beyond the other wheel’s base tangent',
  'stage.n.shaft': 'bending and torsion against the yield strength, where it was torsion against 0.577 of it',
  'stage.n.tension': 'for good: grip and top alone; what comes once is stage.n.peak',
  'vehicle.front-lift': lifted,
}

/** Limits that owe other values only where version 1 reached them in a case; after the colon, that case. */
export const amendedCases: Amended = {
  'track.tension:free': 'running free is no ordinary use: its tension counts in the figure alone',
}

const printed = 'a printed wheel keeps 60 % of its material’s strength'

/** Limits that owe other values in one build alone, after its number. */
export const amendedInBuilds: Amended = {
  '04 stage.4.bending': printed,
  '10 stage.1.bending': printed,
  '19 stage.1.bending': printed,
}

const once = 'version 1 did not tell what breaks once from what lasts'

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
  'stage.n.bending-lasts': once,
  'stage.n.flank': once,
  'stage.n.peak': once,
  'track.tooth-shear-lasts': once,
  'track.tooth-bending-lasts': once,
  'track.tooth-bearing-lasts': once,
  'track.tension-lasts': once,
  'track.climb-free': 'running free is a case of its own group, a mishap',
  'track.stop-shear': jam,
  'track.stop-bending': jam,
  'track.stop-bearing': jam,
  'track.stop-tension': jam,
  'stage.n.stop-bending': jam,
  'stage.n.stop-tension': jam,
  'stage.n.stop-shaft': jam,
  'vehicle.spin-up-lift': 'loops that spin up turn the machine over backwards',
  'vehicle.tip-back': 'slopes on which it falls over',
  'vehicle.tip-side': 'slopes on which it falls over',
  'vehicle.clearance': 'the belly on the soil',
}

/** The id of a limit with the number of its reduction or wire as n. */
export function withoutNumber(id: string): string {
  return id.replace(/\.\d+\./, '.n.')
}
