import { ampacityOf, fusingAmpsOf, steadyWireTemperature, wireTemperatureAfter } from '../heat/wire.ts'
import type { Machine, WirePart } from '../machine/parts.ts'
import {
  busRippleOf,
  dutyNearest,
  motorRippleOf,
  phaseShare,
  rippleShare,
  worstDuty,
} from '../motor/bus-ripple.ts'
import { dutyForAmps, type DriveLine } from '../motor/drive-line.ts'
import type { RowState } from '../vehicle/row-state.ts'
import type { BrakingState } from './braking-step.ts'
import type { Bursts } from './bursts.ts'
import { apart, caseNumber } from './case.ts'
import type { PatternState } from './pattern-state.ts'

/** One wire through the pattern and a burst; SI and °C. */
class WireState {
  /** A RMS through all its conductors together. */
  amps = NaN
  steady = NaN
  /** A of the burst, and when, as a `caseNumber`. */
  burstAmps = NaN
  burstCase: number = caseNumber.build
  burst = NaN
  /** A of all its conductors. */
  ampacity = NaN
  fusingAmps = NaN
}

/** Wires, and what switching makes of the current; NaN where an entry is missing. */
export class WiringState {
  /** As many as have ever been needed; the machine's own number of them is in use. */
  readonly wires: WireState[] = []
  /** A RMS in one controller's capacitors: over the pattern, and at the worst of a burst. */
  rippleAmps = NaN
  rippleWorstAmps = NaN
  /** Duty nearest to one half on a burst's way up. */
  burstDuty = NaN
  /** V and A, peak to peak. */
  busRipple = NaN
  motorRippleAmps = NaN
}

/** What the wires read of the machine's states. */
interface Currents {
  readonly drive: DriveLine
  readonly pattern: PatternState
  readonly bursts: Bursts
  readonly braking: BrakingState
}

/**
 * Fills wires and ripple.
 *
 * *Source:* `docs/model.md` §7, wires and ripple; each law names its own.
 */
export function setWiring(state: WiringState, machine: Machine, currents: Currents): void {
  const { wires } = machine
  for (let index = 0; index < wires.length; index += 1) {
    const wire = wires[index]
    if (wire !== undefined) setWire((state.wires[index] ??= new WireState()), machine, wire, currents)
  }
  setRipple(state, machine, currents)
}

function setWire(state: WireState, machine: Machine, wire: WirePart, currents: Currents): void {
  setWireAmps(state, machine, wire, currents)
  const { airTemperature } = machine.ground
  const { burstSeconds } = machine.service
  const { parallel, area, maxTemperature } = wire
  state.steady = steadyWireTemperature(wire, state.amps / parallel, airTemperature)
  state.burst = wireTemperatureAfter(area, state.steady, state.burstAmps / parallel, burstSeconds)
  state.ampacity = parallel * ampacityOf(wire, maxTemperature, airTemperature)
  state.fusingAmps = parallel * fusingAmpsOf(area, state.steady, burstSeconds)
}

/** RMS over the pattern, and the greatest burst: the pack's, the motor's, or what all loads ask for at once. */
function setWireAmps(
  state: WireState,
  { stepDowns }: Machine,
  { circuit, stepDown }: WirePart,
  { pattern, bursts, braking }: Currents,
): void {
  if (circuit === 'stepDown') {
    const supply = stepDowns[stepDown ?? NaN]
    state.amps = supply?.loadAmps ?? NaN
    state.burstAmps = supply?.peakLoadAmps ?? NaN
    state.burstCase = caseNumber.build
    return
  }
  const isPack = circuit === 'pack'
  state.amps = isPack ? pattern.packAmpsRms : pattern.motorAmpsRms * phaseShare
  state.burstAmps = isPack ? bursts.packAmps : bursts.motorAmps
  state.burstCase = isPack ? bursts.packCase : bursts.motorCase
  const braked = isPack ? braking.chargeAmps : braking.motorAmps
  if (!(braked > state.burstAmps * apart)) return
  state.burstAmps = braked
  state.burstCase = caseNumber.brake
}

function setRipple(state: WiringState, machine: Machine, { drive, pattern, bursts }: Currents): void {
  const { controller, motor, pack } = machine
  const { commutation, throttleCap, pwmFrequency, busCapacitance, busEsr } = controller
  const { motorAmps } = bursts
  const atRest = dutyForAmps(drive, motorAmps, 0)
  state.rippleAmps = rippleOver(pattern, commutation)
  const worst = dutyNearest(worstDuty[commutation], atRest, throttleCap)
  state.rippleWorstAmps = motorAmps * rippleShare(commutation, worst)
  state.burstDuty = dutyNearest(0.5, atRest, throttleCap)
  state.busRipple =
    pwmFrequency === null || busCapacitance === null
      ? NaN
      : busRippleOf(motorAmps, state.burstDuty, pwmFrequency, busCapacitance, busEsr)
  state.motorRippleAmps =
    pwmFrequency === null || motor.inductance === null
      ? NaN
      : motorRippleOf(pack.fullVolts, state.burstDuty, pwmFrequency, motor.inductance)
}

/** √(Σ t I² s(δ)²/Σ t) over the pattern's rows and their turns. */
function rippleOver(pattern: PatternState, commutation: Machine['controller']['commutation']): number {
  let sum = 0
  for (let index = 0; index < pattern.count; index += 1) {
    const row = pattern.rows[index]
    if (row === undefined) break
    const ripple = rowRippleAmps(row, commutation)
    sum += row.seconds * ripple * ripple
  }
  return Math.sqrt(sum / pattern.seconds)
}

/** A RMS in one controller's capacitors through a row and its turns. */
export function rowRippleAmps(
  { straight, turn, turnShare }: RowState,
  commutation: Machine['controller']['commutation'],
): number {
  const along = straight.motorAmps * rippleShare(commutation, straight.duty)
  if (!(turnShare > 0)) return Math.abs(along)
  const turning = turn.motorAmps * rippleShare(commutation, turn.duty)
  return Math.sqrt((1 - turnShare) * along * along + turnShare * turning * turning)
}
