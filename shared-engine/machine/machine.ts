import { cellResistanceFactor, floorVolts, openCircuitVolts } from '../reference/chemistry.ts'
import { coolantOf } from '../reference/coolants.ts'
import { magnetCoefficient } from '../reference/magnets.ts'
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
import { stagePartOf } from './stage.ts'
import { trackPartOf } from './track.ts'
import { absent, gcm2, kilo, litrePerMinute, micro, milli, percent, scaled } from './si.ts'
import type { Build } from '../entries/schema.ts'

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
    track: trackPartOf(build.track),
    vehicle: vehiclePartOf(build.vehicle),
    ground,
    cooling: coolingPartOf(build.cooling),
    accessories: accessoriesPartOf(build.accessories),
    service: servicePartOf(build.service),
  }
}

/**
 * Cells in series and parallel with their wiring.
 *
 * V_oc = S · ocv(charge);  R_b = S · r25 · 2^((25 − T)/20) / P + R_wiring;  I = C · Ah.
 * *Source:* curves and the doubling rule: common practice, no source, see `reference/chemistry.json`.
 */
function packPartOf(build: Build): PackPart {
  const { pack, service } = build
  const ampHours = pack.capacityMah * milli
  const charge = service.stateOfChargePercent * percent
  const cellResistance = pack.cellResistanceMilliohm * milli * cellResistanceFactor(service.packTemperatureC)
  return {
    series: pack.series,
    openVolts: pack.series * openCircuitVolts(pack.chemistry, charge),
    fullVolts: pack.series * openCircuitVolts(pack.chemistry, 1),
    resistance: (pack.series * cellResistance) / pack.parallel + pack.wiringResistanceMilliohm * milli,
    capacity: ampHours * 3600,
    stateOfCharge: charge,
    reserve: service.reservePercent * percent,
    continuousAmps: scaled(pack.continuousC, ampHours),
    burstAmps: scaled(pack.burstC, ampHours),
    floorVolts: pack.series * floorVolts(pack.chemistry),
  }
}

function controllerPartOf(controller: Build['controller']): ControllerPart {
  return {
    resistance: controller.resistanceMilliohm * milli,
    continuousAmps: absent(controller.continuousAmps),
    burstAmps: absent(controller.burstAmps),
    currentLimit: controller.currentLimitAmps ?? Infinity,
    maxElectricalRpm: absent(controller.maxElectricalRpm),
    heatCapacity: absent(controller.heatCapacityJPerK),
    thermalResistance: absent(controller.thermalResistanceKPerW),
    maxTemperature: absent(controller.maxTemperatureC),
    pwmFrequency: scaled(controller.pwmKhz, kilo),
    busCapacitance: scaled(controller.busCapacitanceMicrofarad, micro),
    throttleCap: controller.throttleCapPercent * percent,
  }
}

/**
 * Motor constants from its label and its free-run test.
 *
 * K_t = 60/(2π Kv);  ω_ref = (V_nl − I_nl R_20)/K_t.
 * *Source:* Drela, First-Order DC Electric Motor Model, MIT, public notes.
 */
function motorPartOf(build: Build): MotorPart {
  const motor = build.motor
  const torqueConstant = 60 / (2 * Math.PI * motor.kvRpmPerVolt)
  const resistance = motor.resistanceMilliohm * milli
  return {
    count: motor.count,
    torqueConstant,
    fluxCoefficient: magnetCoefficient(motor.magnet),
    resistance,
    noLoadAmps: motor.noLoadAmps,
    viscousShare: motor.viscousPercent * percent,
    referenceSpeed: (motor.noLoadVolts - motor.noLoadAmps * resistance) / torqueConstant,
    polePairs: motor.poleCount / 2,
    ratedMaxRpm: motor.ratedMaxRpm,
    continuousAmps: absent(motor.continuousAmps),
    burstAmps: absent(motor.burstAmps),
    rotorInertia: motor.rotorInertiaGcm2 * gcm2,
    maxTemperature: motor.maxTemperatureC,
    heatCapacity: absent(motor.heatCapacityJPerK),
    thermalResistance: absent(motor.thermalResistanceKPerW),
  }
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

function vehiclePartOf(vehicle: Build['vehicle']): VehiclePart {
  return {
    mass: vehicle.massKg + vehicle.loadKg,
    towForce: vehicle.towForceN,
    onTrackShare: vehicle.onTrackPercent * percent,
    contactLength: scaled(vehicle.contactLengthMm, milli),
    contactWidth: scaled(vehicle.contactWidthMm, milli),
    gauge: scaled(vehicle.gaugeMm, milli),
    centreHeight: scaled(vehicle.cgHeightMm, milli),
    centreAhead: scaled(vehicle.cgAheadMm, milli),
    dragArea: vehicle.frontalAreaM2 * vehicle.dragCoefficient,
  }
}

function coolingPartOf(cooling: Build['cooling']): CoolingPart | null {
  if (cooling === undefined) return null
  const { density, specificHeat } = coolantOf(cooling.coolant)
  return {
    flow: cooling.flowLPerMin * litrePerMinute,
    density,
    specificHeat,
    radiator: cooling.radiatorWPerK,
  }
}

function accessoriesPartOf(accessories: Build['accessories']): AccessoriesPart {
  let power = 0
  const converters = accessories.map((accessory) => {
    power += accessory.watts / (accessory.converterEfficiencyPercent * percent)
    return {
      name: accessory.name,
      amps: accessory.volts === undefined ? null : accessory.watts / accessory.volts,
      allowedAmps: absent(accessory.converterAmps),
    }
  })
  return { power, converters }
}

function servicePartOf(service: Build['service']): ServicePart {
  return {
    factor: service.factor,
    windingTemperature: service.windingTemperatureC,
    loadShare: service.loadPercent * percent,
    packTemperature: service.packTemperatureC,
  }
}
