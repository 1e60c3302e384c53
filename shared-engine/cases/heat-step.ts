import type { Machine } from '../machine/parts.ts'
import { packEndTemperature } from '../pack/heat.ts'
import { setBraking } from './braking-step.ts'
import { setBursts } from './bursts.ts'
import type { Evaluation } from './evaluation.ts'
import { setBurstTimes } from './heat-times.ts'
import { setPatternHeat } from './pattern-heat.ts'
import { setPattern } from './pattern-state.ts'

/** The drive pattern as steady rows, and the bursts that the ground lets happen. */
export function setDriving(e: Evaluation, machine: Machine): void {
  setBursts(e.bursts, machine, e, e.top, e.restAmps, e.pivotAmps)
  setPattern(e.pattern, machine, e, e.top.exists ? e.top.groundSpeed : NaN)
}

/** What the pattern heats. */
export function setHeat(e: Evaluation, machine: Machine): void {
  const { pack, service, ground } = machine
  const { pattern } = e
  setPatternHeat(e.heat, machine, pattern)
  setBurstTimes(e.times, machine, e, e.heat, e.pivotThrust, e.restAmps)
  e.packHeat = pattern.packAmpsRms * pattern.packAmpsRms * pack.cellResistance
  e.packEnd = packEndTemperature(
    service.packTemperature,
    ground.airTemperature,
    e.packHeat,
    pack.heatCapacity,
    pack.thermalResistance,
    pattern.life,
  )
}

/** Stops, and what they feed back. */
export function setBrakes(e: Evaluation, machine: Machine): void {
  setBraking(e.braking, machine, e, e.top, e.pattern)
}
