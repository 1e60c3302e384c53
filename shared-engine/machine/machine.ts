import { cellResistanceFactor, floorVolts, openCircuitVolts } from '../reference/chemistry.ts'
import { coolantOf } from '../reference/coolants.ts'
import { cellHeatOf, coldCapacityShare } from '../reference/heat.ts'
import { magnetCoefficient } from '../reference/magnets.ts'
import { toEngine } from '../units/convert.ts'
import { materialOf } from '../reference/materials.ts'
import { milli, secondsPerHour } from '../units/factors.ts'
import { torqueConstantOf } from '../units/rpm.ts'
import type {
  AccessoriesPart,
  ControllerPart,
  CoolingPart,
  Machine,
  MotorPart,
  PackPart,
  ServicePart,
  StagePart,
  Train,
  VehiclePart,
} from './parts.ts'
import { groundPartOf } from './ground.ts'
import { motorJointPartOf } from './joint.ts'
import { patternPartOf } from './pattern.ts'
import { stepDownPartOf, wirePartOf } from './wires.ts'
import { stagePartOf } from './stage.ts'
import { trackPartOf } from './track.ts'
import { siOf } from './si.ts'
import { buildRows } from '../entries/parts/build.ts'
import type { Build } from '../entries/schema.ts'

const packIn = siOf(buildRows.pack.entries)
const controllerIn = siOf(buildRows.controller.entries)
const motorIn = siOf(buildRows.motor.entries)
const vehicleIn = siOf(buildRows.vehicle.entries)
const coolingIn = siOf(buildRows.cooling.entries)
const accessoryIn = siOf(buildRows.accessories.item.entries)
const serviceIn = siOf(buildRows.service.entries)

/**
 * The machine in SI, tables looked up: the only crossing from bench units to the physics.
 *
 * @param build a build that `readBuild` accepted: rules between fields hold
 * @returns the machine; the same build always gives the same numbers
 * *Source:* the entries' definitions; tables as named in `reference/`.
 */
export function machineOf(build: Build): Machine {
  const stages = build.stages.map(stagePartOf)
  const motor = motorPartOf(build)
  const ground = groundPartOf(build)
  return {
    name: build.name,
    pack: packPartOf(build),
    controller: controllerPartOf(build.controller),
    motor,
    stages,
    train: trainOf(motor, stages),
    track: trackPartOf(build.track, ground.airTemperature),
    vehicle: vehiclePartOf(build.vehicle),
    ground,
    cooling: coolingPartOf(build.cooling),
    accessories: accessoriesPartOf(build),
    stepDowns: build.stepDowns.map((supply, place) => stepDownPartOf(supply, place, build.accessories)),
    wires: build.wires.map(wirePartOf),
    service: servicePartOf(build.service),
  }
}

/**
 * Cells in series and parallel with their wiring.
 *
 * V_oc = S · ocv(charge);  R_b = S · r25 · 2^((25 − T)/20) / P + R_wiring;  I = C · Ah.
 * *Source:* curves and the doubling rule: common practice, no source, see `reference/chemistry.json`.
 */
export function packPartOf(build: Build): PackPart {
  const { pack, service } = build
  const [si, run] = [packIn(pack), serviceIn(service)]
  // Through ampere-hours, which a rating in C is of. The kind's own factor, 3.6, rounds once less, and so the last digit of
  // a quarter of all capacities would be another than in every figure so far.
  const ampHours = pack.capacityMah * milli
  const charge = run('stateOfChargePercent')
  const packTemperature = run('packTemperatureC')
  const cellResistance = si('cellResistanceMilliohm') * cellResistanceFactor(packTemperature)
  const cells = (pack.series * cellResistance) / pack.parallel
  const reserve = run('reservePercent')
  const wiring = si('wiringResistanceMilliohm')
  const volts = (at: number) => pack.series * openCircuitVolts(pack.chemistry, at)
  const cell = cellHeatOf(pack.chemistry)
  const mass = si('massKg') ?? (volts(0.5) * ampHours) / cell.wattHoursPerKg
  return {
    chemistry: pack.chemistry,
    series: pack.series,
    parallel: pack.parallel,
    openVolts: volts(charge),
    fullVolts: volts(1),
    resistance: cells + wiring,
    cellResistance: cells,
    wiringResistance: wiring,
    capacity: ampHours * secondsPerHour,
    stateOfCharge: charge,
    reserve,
    usable: ampHours * secondsPerHour * (charge - reserve) * coldCapacityShare(packTemperature),
    middleVolts: volts((charge + reserve) / 2),
    reserveVolts: volts(reserve),
    ceilingVolts: pack.series * cell.ceilingVolts,
    continuousAmps: pack.continuousC === undefined ? null : pack.continuousC * ampHours,
    burstAmps: pack.burstC === undefined ? null : pack.burstC * ampHours,
    floorVolts: pack.series * floorVolts(pack.chemistry),
    heatCapacity: mass * cell.specificHeat,
    thermalResistance: si('thermalResistanceKPerW'),
    maxTemperature: si('maxTemperatureC'),
    chargeAmps: pack.chargeC === undefined ? null : pack.chargeC * ampHours,
    fuseAmps: si('fuseAmps'),
  }
}

/** The controller in SI. */
export function controllerPartOf(controller: Build['controller']): ControllerPart {
  const si = controllerIn(controller)
  return {
    resistance: si('resistanceMilliohm'),
    continuousAmps: si('continuousAmps'),
    burstAmps: si('burstAmps'),
    currentLimit: si('currentLimitAmps') ?? Infinity,
    maxElectricalRpm: si('maxElectricalRpm'),
    heatCapacity: si('heatCapacityJPerK'),
    thermalResistance: si('thermalResistanceKPerW'),
    maxTemperature: si('maxTemperatureC'),
    pwmFrequency: si('pwmKhz'),
    busCapacitance: si('busCapacitanceMicrofarad'),
    throttleCap: si('throttleCapPercent'),
    switchingTime: si('switchingNs'),
    deadTime: si('deadTimeNs'),
    diodeVolts: si('diodeVolts'),
    commutation: controller.commutation,
    busEsr: si('busEsrMilliohm'),
    busRippleAmps: si('busRippleAmps'),
    busRatedVolts: si('busRatedVolts'),
    maxVolts: si('maxVolts'),
    brakeAmps: si('brakeAmps'),
  }
}

/**
 * Motor constants from its label and its free-run test.
 *
 * K_t = 60/(2π Kv);  ω_ref = (V_nl − I_nl R_20)/K_t.
 * *Source:* Drela, First-Order DC Electric Motor Model, MIT, public notes.
 */
export function motorPartOf(build: Build): MotorPart {
  const motor = build.motor
  const si = motorIn(motor)
  const torqueConstant = torqueConstantOf(si('kvRpmPerVolt'))
  const resistance = si('resistanceMilliohm')
  return {
    count: motor.count,
    torqueConstant,
    fluxCoefficient: magnetCoefficient(motor.magnet),
    resistance,
    noLoadAmps: si('noLoadAmps'),
    viscousShare: si('viscousPercent'),
    referenceSpeed: (si('noLoadVolts') - si('noLoadAmps') * resistance) / torqueConstant,
    polePairs: motor.poleCount / 2,
    ratedMaxRpm: si('ratedMaxRpm'),
    continuousAmps: si('continuousAmps'),
    burstAmps: si('burstAmps'),
    rotorInertia: si('rotorInertiaGcm2'),
    maxTemperature: si('maxTemperatureC'),
    heatCapacity: si('heatCapacityJPerK'),
    thermalResistance: si('thermalResistanceKPerW'),
    windingToCase: si('windingToCaseKPerW'),
    caseToSink: si('caseToSinkKPerW'),
    windingHeatCapacity: si('windingHeatCapacityJPerK'),
    caseHeatCapacity: si('caseHeatCapacityJPerK'),
    inductance: si('inductanceMicrohenry'),
    joint: motor.joint === undefined ? null : motorJointPartOf(motor.joint, pinionHubOf(build.stages[0])),
  }
}

/** What the bore of the wheel on the motor's shaft may be pressed with, Pa; Infinity where it is no gear. */
function pinionHubOf(stage: Build['stages'][number] | undefined): number {
  if (stage?.kind !== 'gear') return Infinity
  const { bearing, knockdown } = materialOf(stage.driverMaterial)
  return bearing * knockdown
}

/**
 * All reductions of one motor together.
 *
 * G = Π ratio;  η = Π efficiency;  J = J_rotor + Σ J_k / G_k², with G_k the ratio from the motor to shaft k.
 * *Source:* reflected inertia, any machine-dynamics text; 1 for ratio and efficiency where there is no stage.
 */
export function trainOf(motor: MotorPart, stages: readonly StagePart[]): Train {
  let ratio = 1
  let efficiency = 1
  let inertiaAtMotor = motor.rotorInertia
  for (const stage of stages) {
    ratio *= stage.ratio
    efficiency *= stage.efficiency
    inertiaAtMotor += stage.drivenInertia / (ratio * ratio)
  }
  return { ratio, efficiency, inertiaAtMotor }
}

/**
 * Mass and what it does to the machine.
 *
 * Centre of mass of machine and load: h = (m_v h_v + m_l h_l)/(m_v + m_l), likewise ahead.
 * *Source:* statics, any mechanics text.
 */
export function vehiclePartOf(vehicle: Build['vehicle']): VehiclePart {
  const si = vehicleIn(vehicle)
  const [dry, load] = [si('massKg'), si('loadKg')]
  const mass = dry + load
  // The load's own place counts with its mass; without one it rides where the machine's centre is.
  const together = (own: number | null, loads: number | null) =>
    own === null || loads === null || load === 0 ? own : (dry * own + load * loads) / mass
  return {
    mass,
    dryMass: si('massKg'),
    load: si('loadKg'),
    towForce: si('towForceN'),
    towHeight: si('towHeightMm'),
    onTrackShare: si('onTrackPercent'),
    contactLength: si('contactLengthMm'),
    contactWidth: si('contactWidthMm'),
    gauge: si('gaugeMm'),
    centreHeight: together(si('cgHeightMm'), si('loadCgHeightMm')),
    centreAhead: together(si('cgAheadMm'), si('loadCgAheadMm')),
    skiDistance: si('skiDistanceMm'),
    clearance: si('clearanceMm'),
    brakeForce: si('brakeForceN'),
    dragArea: si('frontalAreaM2') * si('dragCoefficient'),
  }
}

/** The cooling circuit in SI; null without one. */
export function coolingPartOf(cooling: Build['cooling']): CoolingPart | null {
  if (cooling === undefined) return null
  const si = coolingIn(cooling)
  const { density, specificHeat, freezes, boilingRise } = coolantOf(cooling.coolant)
  return {
    flow: si('flowLPerMin'),
    density,
    specificHeat,
    radiator: si('radiatorWPerK'),
    freezes,
    boilingRise,
    coolant: cooling.coolant,
    volume: si('tankLitres'),
    airCapacity: si('airWPerK'),
    testFlow: si('testFlowLPerMin'),
    flowTestTemperature: si('flowTestC'),
    pumpPower: si('pumpWatts'),
    capPressure: si('capKpa'),
  }
}

/** P_a: what accessories take over the efficiency of their converter or step-down, and the pump. */
export function accessoriesPartOf({ accessories, stepDowns, cooling }: Build): AccessoriesPart {
  let power = cooling === undefined ? 0 : cooling.pumpWatts
  const converters = accessories.map((accessory) => {
    const si = accessoryIn(accessory)
    const [watts, volts] = [si('watts'), si('volts')]
    const supply = accessory.stepDown === undefined ? undefined : stepDowns[accessory.stepDown]
    power +=
      watts /
      (supply === undefined
        ? si('converterEfficiencyPercent')
        : toEngine(supply.efficiencyPercent, 'fraction'))
    return {
      name: accessory.name,
      amps: volts === null ? null : watts / volts,
      allowedAmps: si('converterAmps'),
      maxVolts: supply === undefined ? si('maxVolts') : null,
    }
  })
  return { power, converters }
}

/** What it is run like, in SI. */
export function servicePartOf(service: Build['service']): ServicePart {
  const si = serviceIn(service)
  return {
    factor: si('factor'),
    windingTemperature: si('windingTemperatureC'),
    packTemperature: si('packTemperatureC'),
    burstSeconds: si('burstSeconds'),
    lifeHours: service.lifeHours,
    pattern: patternPartOf(service.pattern),
  }
}
