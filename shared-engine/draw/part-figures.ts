import type { Machine } from '../machine/parts.ts'
import type { FigureName } from '../figures/table.ts'
import { formatTo } from '../units/display.ts'
import { rpmOf } from '../units/rpm.ts'
import type { Shown } from '../units/display.ts'
import type { QuantityKind, UnitSystem } from '../units/kinds.ts'

/** What the power path tells of the drive's state, SI. */
export interface PathState {
  readonly duty: number
  /** rad/s. */
  readonly motorSpeed: number
  /** A of one motor. */
  readonly motorAmps: number
  /** N·m of one motor. */
  readonly motorTorque: number
  readonly packAmps: number
  readonly packVolts: number
  readonly beltSpeed: number
  readonly groundSpeed: number
  /** N, all loops. */
  readonly motorThrust: number
  readonly thrust: number
  readonly slip: number
}

/** Two figures under each part, by the part's name. */
type PartFigures = Readonly<Record<string, readonly Shown[]>>

/**
 * The two live figures of each part: volts and amps of the pack, duty and amps of the controller, speed and torque of
 * motor and shafts, belt speed and pull of one loop, ground speed and thrust; the vehicle's mass.
 *
 * Torque behind stage k: T Π u_j η_j, speed ω / Π u_j over the stages up to it; the pull of one loop is the motor-side
 * thrust shared between the loops. Wires: what they drop and give off; coolant: flow and radiator.
 *
 * @param sure how many figures a figure of the whole machine deserves: those of its parts are taken as known alike
 * *Source:* `docs/model.md` §§4 and 5.
 */
export function partFigures(
  machine: Machine,
  state: PathState,
  system: UnitSystem,
  sure: (figure: FigureName) => 2 | 3 | undefined = () => undefined,
): PartFigures {
  const shown = (value: number, kind: QuantityKind, as?: FigureName): Shown =>
    formatTo(value, kind, system, as && sure(as))
  const figures: Record<string, readonly Shown[]> = {
    pack: [shown(state.packVolts, 'volts', 'topPackVolts'), shown(state.packAmps, 'amps', 'topPackAmps')],
    controller: [formatTo(state.duty, 'fraction', system, 3), shown(state.motorAmps, 'amps', 'topMotorAmps')],
    motor: [
      shown(rpmOf(state.motorSpeed), 'rpm', 'topMotorRpm'),
      shown(state.motorTorque, 'torque', 'topMotorAmps'),
    ],
    track: [
      shown(state.beltSpeed, 'speed', 'topBeltSpeedMps'),
      shown(state.motorThrust / machine.track.count, 'force', 'groundResistanceN'),
    ],
    ground: [
      shown(state.groundSpeed, 'speed', 'topSpeedMps'),
      shown(state.thrust, 'force', 'groundResistanceN'),
    ],
    vehicle: [shown(machine.vehicle.mass, 'mass', 'equivalentMassKg')],
    wires: wireFigures(machine, state, shown),
    stepDowns: [],
  }
  if (machine.cooling !== null) {
    const { flow, radiator } = machine.cooling
    figures['cooling'] = [shown(flow, 'flow'), shown(radiator, 'thermalConductance')]
  }
  let speed = state.motorSpeed
  let torque = state.motorTorque
  machine.stages.forEach((stage, index) => {
    speed /= stage.ratio
    torque *= stage.ratio * stage.efficiency
    figures[`stage.${index + 1}`] = [
      shown(rpmOf(speed), 'rpm', 'topMotorRpm'),
      shown(torque, 'torque', 'topMotorAmps'),
    ]
  })
  return figures
}

/**
 * Volts that the pack's wires drop, and heat in them and in the motors' leads.
 *
 * U = I_p R_p,  P = I_p² R_p + M I_m² R_m, wires of a circuit one after the other.
 *
 * *Source:* Ohm and Joule; `docs/model.md` §7.
 */
function wireFigures(
  { wires, motor }: Machine,
  { packAmps, motorAmps }: PathState,
  shown: (value: number, kind: QuantityKind) => Shown,
): readonly Shown[] {
  const ohm = (circuit: 'pack' | 'motor') =>
    wires.reduce((sum, wire) => sum + (wire.circuit === circuit ? wire.resistance : 0), 0)
  const [pack, leads] = [ohm('pack'), ohm('motor')]
  const watts = packAmps ** 2 * pack + motor.count * motorAmps ** 2 * leads
  return [shown(packAmps * pack, 'volts'), shown(watts, 'watts')]
}
