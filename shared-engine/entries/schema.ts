import { chemistryIds } from '../reference/chemistry.ts'
import { coolantIds } from '../reference/coolants.ts'
import { magnetIds } from '../reference/magnets.ts'
import { z } from '../reference/zod.ts'
import { maybeNumber, number, numberOr, text, word } from './entries.ts'
import { stageSchema } from './stage-schema.ts'
import { trackSchema } from './track-schema.ts'

export const buildFormat = 'pitchline-build'
export const buildVersion = 1

const packSchema = z.strictObject({
  chemistry: word('pack.chemistry', chemistryIds),
  series: number('pack.series'),
  parallel: numberOr('pack.parallel'),
  capacityMah: number('pack.capacityMah'),
  cellResistanceMilliohm: number('pack.cellResistanceMilliohm'),
  wiringResistanceMilliohm: numberOr('pack.wiringResistanceMilliohm'),
  continuousC: maybeNumber('pack.continuousC'),
  burstC: maybeNumber('pack.burstC'),
})

const controllerSchema = z.strictObject({
  resistanceMilliohm: numberOr('controller.resistanceMilliohm'),
  continuousAmps: maybeNumber('controller.continuousAmps'),
  burstAmps: maybeNumber('controller.burstAmps'),
  currentLimitAmps: maybeNumber('controller.currentLimitAmps'),
  maxElectricalRpm: maybeNumber('controller.maxElectricalRpm'),
  heatCapacityJPerK: maybeNumber('controller.heatCapacityJPerK'),
  thermalResistanceKPerW: maybeNumber('controller.thermalResistanceKPerW'),
  maxTemperatureC: maybeNumber('controller.maxTemperatureC'),
  pwmKhz: maybeNumber('controller.pwmKhz'),
  busCapacitanceMicrofarad: maybeNumber('controller.busCapacitanceMicrofarad'),
  throttleCapPercent: numberOr('controller.throttleCapPercent'),
})

const motorSchema = z.strictObject({
  count: numberOr('motor.count'),
  kvRpmPerVolt: number('motor.kvRpmPerVolt'),
  resistanceMilliohm: number('motor.resistanceMilliohm'),
  noLoadAmps: number('motor.noLoadAmps'),
  noLoadVolts: number('motor.noLoadVolts'),
  viscousPercent: numberOr('motor.viscousPercent'),
  poleCount: number('motor.poleCount'),
  ratedMaxRpm: number('motor.ratedMaxRpm'),
  magnet: word('motor.magnet', magnetIds).default('ndfeb'),
  continuousAmps: maybeNumber('motor.continuousAmps'),
  burstAmps: maybeNumber('motor.burstAmps'),
  rotorInertiaGcm2: numberOr('motor.rotorInertiaGcm2'),
  maxTemperatureC: numberOr('motor.maxTemperatureC'),
  heatCapacityJPerK: maybeNumber('motor.heatCapacityJPerK'),
  thermalResistanceKPerW: maybeNumber('motor.thermalResistanceKPerW'),
})

const vehicleSchema = z.strictObject({
  massKg: number('vehicle.massKg'),
  loadKg: numberOr('vehicle.loadKg'),
  towForceN: numberOr('vehicle.towForceN'),
  onTrackPercent: numberOr('vehicle.onTrackPercent'),
  contactLengthMm: maybeNumber('vehicle.contactLengthMm'),
  contactWidthMm: maybeNumber('vehicle.contactWidthMm'),
  gaugeMm: maybeNumber('vehicle.gaugeMm'),
  cgHeightMm: maybeNumber('vehicle.cgHeightMm'),
  cgAheadMm: maybeNumber('vehicle.cgAheadMm'),
  frontalAreaM2: numberOr('vehicle.frontalAreaM2'),
  dragCoefficient: numberOr('vehicle.dragCoefficient'),
})

const anyGround = {
  skiFriction: numberOr('ground.skiFriction'),
  gradePercent: numberOr('ground.gradePercent'),
  airTemperatureC: numberOr('ground.airTemperatureC'),
  altitudeM: numberOr('ground.altitudeM'),
  turnFriction: maybeNumber('ground.turnFriction'),
}

const groundSchema = z.discriminatedUnion('model', [
  z.strictObject({
    model: z.literal('coefficient'),
    rollingCoefficient: number('ground.rollingCoefficient'),
    gripCoefficient: number('ground.gripCoefficient'),
    slipPercent: numberOr('ground.slipPercent'),
    ...anyGround,
  }),
  z.strictObject({
    model: z.literal('soil'),
    soil: z.strictObject({
      n: number('ground.soil.n'),
      kc: number('ground.soil.kc'),
      kphi: number('ground.soil.kphi'),
      cohesionKpa: number('ground.soil.cohesionKpa'),
      frictionDegrees: number('ground.soil.frictionDegrees'),
      shearModulusMm: number('ground.soil.shearModulusMm'),
    }),
    ...anyGround,
  }),
])

const coolingSchema = z.strictObject({
  kind: z.literal('liquid'),
  flowLPerMin: number('cooling.flowLPerMin'),
  coolant: word('cooling.coolant', coolantIds),
  radiatorWPerK: number('cooling.radiatorWPerK'),
})

const accessorySchema = z.strictObject({
  name: text('accessories.*.name'),
  watts: number('accessories.*.watts'),
  volts: maybeNumber('accessories.*.volts'),
  converterEfficiencyPercent: numberOr('accessories.*.converterEfficiencyPercent'),
  converterAmps: maybeNumber('accessories.*.converterAmps'),
})

const serviceSchema = z.strictObject({
  factor: numberOr('service.factor'),
  windingTemperatureC: numberOr('service.windingTemperatureC'),
  loadPercent: numberOr('service.loadPercent'),
  packTemperatureC: numberOr('service.packTemperatureC'),
  stateOfChargePercent: numberOr('service.stateOfChargePercent'),
  reservePercent: numberOr('service.reservePercent'),
})

const toleranceSchema = z.strictObject({
  plusMinusPercent: maybeNumber('tolerances.*.plusMinusPercent'),
  plusMinus: maybeNumber('tolerances.*.plusMinus'),
  shape: word('tolerances.*.shape', ['uniform', 'normal']),
})

/** The stored build in bench units: the shape of the file, with every default filled in on the way out. */
export const buildSchema = z.strictObject({
  format: z.literal(buildFormat),
  version: z.literal(buildVersion),
  name: text('name'),
  notes: text('notes').default(''),
  pack: packSchema,
  controller: controllerSchema.prefault({}),
  motor: motorSchema,
  stages: z.array(stageSchema).max(6).default([]),
  track: trackSchema,
  vehicle: vehicleSchema,
  ground: groundSchema,
  cooling: coolingSchema.optional(),
  accessories: z.array(accessorySchema).max(20).default([]),
  service: serviceSchema.prefault({}),
  tolerances: z.record(z.string(), toleranceSchema).default({}),
  origins: z.record(z.string(), word('origins.*', ['measured', 'stated', 'guessed'])).default({}),
})

/** A build as the file holds it: what the builder entered, nothing more. This is what is edited and saved. */
export type StoredBuild = z.input<typeof buildSchema>

/** A build with every default in force, still in bench units: what the physics reads. */
export type Build = z.output<typeof buildSchema>

export type Stage = Build['stages'][number]
export type Tooth = NonNullable<Build['track']['tooth']>
export type Ground = Build['ground']
export type Cooling = NonNullable<Build['cooling']>
export type Accessory = Build['accessories'][number]
export type Tolerance = Build['tolerances'][string]
export type EntryOrigin = Build['origins'][string]
