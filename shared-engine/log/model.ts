import { check, type Checked } from '../check.ts'
import type { Build } from '../entries/schema.ts'
import type { Machine } from '../machine/parts.ts'
import type { DriveLine } from '../motor/drive-line.ts'
import { referenceTemperature } from '../motor/constants.ts'
import { freeSpeedAt } from '../motor/free-speed.ts'
import { openCircuitVolts } from '../reference/chemistry.ts'
import { rpmOf } from '../units/rpm.ts'

/** What a log is judged by: the build worked out, and a few numbers of it that many steps need. */
export interface LogModel {
  readonly build: Build
  readonly checked: Checked
  readonly machine: Machine
  /** The running state: given charge, accessories and temperatures. */
  readonly drive: DriveLine
  /** N_f, rpm: the most that an unloaded motor turns, pack full, full duty, cold or hot. */
  readonly freeRpm: number
  /** m/s of the belt at that rpm. */
  readonly freeBeltSpeed: number
  /** Kv, rpm/V at 20 °C. */
  readonly rpmPerVolt: number
  /** V of an empty and a full cell at rest. */
  readonly emptyCellVolts: number
  readonly fullCellVolts: number
  /** I_a, A. */
  readonly accessoryAmps: number
  /** Ground's or equilibrium's slip, 0 to 1. */
  readonly slip: number
}

/**
 * Works a build out for its logs.
 *
 * N_f is the higher free speed of the motor cold and hot at a duty of 1, whatever the throttle's cap: a recorder does not
 * know of the cap.
 *
 * *Source:* the engine's own functions; no physics of its own.
 */
export function logModelOf(build: Build): LogModel {
  const checked = check(build)
  const { machine, evaluation } = checked
  const { pack, motor, ground } = machine
  const free = Math.max(
    freeSpeedAt(machine, pack.fullVolts, referenceTemperature, 1),
    freeSpeedAt(machine, pack.fullVolts, motor.maxTemperature, 1),
  )
  const slip = ground.model === 'soil' ? evaluation.top.slip : ground.slip
  return {
    build,
    checked,
    machine,
    drive: evaluation.drive,
    freeRpm: rpmOf(free),
    freeBeltSpeed: free / evaluation.line.motorPerBelt,
    rpmPerVolt: rpmOf(1 / motor.torqueConstant),
    emptyCellVolts: openCircuitVolts(build.pack.chemistry, 0),
    fullCellVolts: openCircuitVolts(build.pack.chemistry, 1),
    accessoryAmps: evaluation.accessoryAmps,
    slip: Number.isFinite(slip) ? slip : 0,
  }
}
