import type { Machine } from '../machine/parts.ts'
import { airGasConstant, copperTemperatureCoefficient, zeroCelsius } from '../constants.ts'
import { boilingPoint } from '../heat/boiling.ts'
import { LumpCycle } from '../heat/controller-cycle.ts'
import {
  addCycleRow,
  clearCycle,
  closeCycle,
  MotorCycle,
  RowEnd,
  setHottestEnd,
} from '../heat/motor-cycle.ts'
import { steadyExcess } from '../heat/steady-nodes.ts'
import { inletResistance, jacketFactor, radiatorConductance } from '../heat/stream.ts'
import { MotorNodes } from '../heat/two-nodes.ts'
import { type PatternState, rowAmpsSquared, rowControllerLoss, rowIronLoss } from './pattern-state.ts'

/** Temperatures of a pattern that repeats itself; °C, NaN where one does not exist. */
export class PatternHeat {
  readonly nodes = new MotorNodes()
  readonly cycle = new MotorCycle()
  /** Whether the motor's way to its sink is known, its capacities too, and whether it has two nodes. */
  hasMotor = false
  hasCapacities = false
  /** The loss grows faster with heat than it leaves: there is no steady state. */
  runaway = false
  /** K/W from winding to case (0 with one node), from the last node to the inlet, and as entered. */
  windingToCase = 0
  toInlet = NaN
  toSink = NaN
  /** W/K of the coolant's flow; NaN in air. */
  capacityRate = NaN
  /** T_1, T_2, T_3: what feeds the motors, the controllers, and returns; the air's without a circuit. */
  feed = NaN
  controllerFeed = NaN
  hot = NaN
  /** At which the coolant boils; NaN in air. */
  boils = NaN
  /** W of one motor into its sink. */
  motorHeat = NaN
  /** The hottest row end, or the steady state without capacities. */
  readonly end = new RowEnd()
  controller = NaN
}

const lump = new LumpCycle()

/**
 * Fills the temperatures of a pattern.
 *
 * Motors in parallel, then controllers in parallel, radiator, tank: T_1 = T_3 − q/C feeds the motors,
 * T_2 = T_1 + M Q_m/C the controllers;  q = M (Q_m + Q_e).
 *
 * *Source:* `docs/model.md` §7; each law names its own.
 */
export function setPatternHeat(heat: PatternHeat, machine: Machine, pattern: PatternState): void {
  setWays(heat, machine)
  heat.runaway = false
  heat.end.winding = heat.end.case = heat.end.hottest = NaN
  if (heat.hasMotor && heat.hasCapacities) setCycle(heat, machine, pattern)
  if (machine.cooling === null) {
    heat.feed = heat.controllerFeed = machine.ground.airTemperature
    heat.hot = NaN
  } else setCircuit(heat, machine, pattern)
  if (heat.hasMotor && !heat.runaway) setMotorEnd(heat, machine, pattern)
  setController(heat, machine, pattern)
}

/** Resistances as entered, and as seen from the stream's inlet. */
function setWays(heat: PatternHeat, machine: Machine): void {
  const { motor, cooling } = machine
  const { nodes } = heat
  const two = motor.windingToCase !== null && motor.caseToSink !== null
  const jacket = cooling === null ? 1 : jacketFactor(cooling.testFlow, cooling.flow)
  nodes.two = two
  heat.windingToCase = two ? (motor.windingToCase ?? NaN) : 0
  heat.toSink = (two ? jacket * (motor.caseToSink ?? NaN) : motor.thermalResistance) ?? NaN
  heat.hasMotor = !Number.isNaN(heat.toSink)
  heat.capacityRate = cooling === null ? NaN : cooling.density * cooling.flow * cooling.specificHeat
  heat.toInlet =
    cooling === null || !heat.hasMotor
      ? heat.toSink
      : inletResistance(heat.toSink, heat.capacityRate / motor.count)
  nodes.windingCapacity = (two ? motor.windingHeatCapacity : motor.heatCapacity) ?? NaN
  nodes.caseCapacity = (two ? motor.caseHeatCapacity : 0) ?? NaN
  nodes.windingToCase = 1 / heat.windingToCase
  nodes.toSink = 1 / heat.toInlet
  heat.hasCapacities = !Number.isNaN(nodes.windingCapacity) && !Number.isNaN(nodes.caseCapacity)
}

function setCycle(heat: PatternHeat, machine: Machine, pattern: PatternState): void {
  const withMean = machine.cooling !== null
  clearCycle(heat.cycle)
  for (let index = 0; index < pattern.count; index += 1) {
    const row = pattern.rows[index]
    if (row === undefined) break
    const coldCopper = rowAmpsSquared(row) * machine.motor.resistance
    addCycleRow(heat.cycle, heat.nodes, row.seconds, coldCopper, rowIronLoss(row), withMean)
  }
  closeCycle(heat.cycle, withMean)
  heat.runaway = heat.cycle.runaway
}

const balance = { fixed: 0, perSink: 0 }

/** Mean heat of one motor into its sink, affine in T_1: fixed + perSink · T_1. */
function setBalance(heat: PatternHeat, machine: Machine, pattern: PatternState): void {
  balance.perSink = 0
  balance.fixed = pattern.ironLoss + pattern.copperLoss
  if (!heat.hasMotor) return
  if (heat.hasCapacities) {
    balance.fixed = heat.cycle.meanFixed / heat.toInlet
    balance.perSink = heat.cycle.meanPerSink / heat.toInlet
    return
  }
  const resistance = heat.windingToCase + heat.toInlet
  const coldCopper = meanColdCopper(machine, pattern)
  const excess = steadyExcess(resistance, heat.toInlet, coldCopper, pattern.ironLoss, 0)
  const growth = coldCopper * copperTemperatureCoefficient
  balance.fixed = pattern.ironLoss + (excess - heat.toInlet * pattern.ironLoss) / resistance
  balance.perSink = growth / (1 - resistance * growth)
  heat.runaway = Number.isNaN(excess)
}

/** I_rms² R_20, W. */
function meanColdCopper(machine: Machine, pattern: PatternState): number {
  return pattern.motorAmpsRms * pattern.motorAmpsRms * machine.motor.resistance
}

/** T_1 = T_air + q (1/K − 1/C), q affine in T_1. */
function setCircuit(heat: PatternHeat, machine: Machine, pattern: PatternState): void {
  const { cooling, motor, ground } = machine
  const { capacityRate } = heat
  setBalance(heat, machine, pattern)
  const { airDensity, airTemperature } = ground
  const pressure = airDensity * airGasConstant * (airTemperature + zeroCelsius)
  heat.boils = boilingPoint(pressure + (cooling?.capPressure ?? 0), cooling?.boilingRise ?? 0)
  const conductance = radiatorConductance(
    cooling?.radiator ?? NaN,
    cooling?.airCapacity ?? null,
    capacityRate,
  )
  const behind = motor.count * (1 / conductance - 1 / capacityRate)
  const left = 1 - behind * balance.perSink
  if (!(left > 0)) heat.runaway = true
  const feed = (airTemperature + behind * (balance.fixed + pattern.controllerLoss)) / left
  heat.feed = heat.runaway ? NaN : feed
  heat.motorHeat = balance.fixed + balance.perSink * heat.feed
  heat.controllerFeed = heat.feed + (motor.count * heat.motorHeat) / capacityRate
  heat.hot = heat.controllerFeed + (motor.count * pattern.controllerLoss) / capacityRate
}

function setMotorEnd(heat: PatternHeat, machine: Machine, pattern: PatternState): void {
  const { end } = heat
  if (heat.hasCapacities) {
    setHottestEnd(end, heat.cycle, heat.feed)
    return
  }
  const resistance = heat.windingToCase + heat.toInlet
  const coldCopper = meanColdCopper(machine, pattern)
  const excess = steadyExcess(resistance, heat.toInlet, coldCopper, pattern.ironLoss, heat.feed)
  heat.runaway = Number.isNaN(excess)
  // What leaves the winding passes the case; the iron's loss joins it there.
  const copper = (excess - heat.toInlet * pattern.ironLoss) / resistance
  end.winding = heat.feed + excess
  end.case = heat.feed + heat.toInlet * (copper + pattern.ironLoss)
  end.hottest = Math.max(end.winding, end.case)
}

function setController(heat: PatternHeat, machine: Machine, pattern: PatternState): void {
  const { thermalResistance, heatCapacity } = machine.controller
  heat.controller = NaN
  if (thermalResistance === null) return
  const toInlet =
    machine.cooling === null
      ? thermalResistance
      : inletResistance(thermalResistance, heat.capacityRate / machine.motor.count)
  if (heatCapacity === null) {
    heat.controller = heat.controllerFeed + toInlet * pattern.controllerLoss
    return
  }
  lump.begin(toInlet, heatCapacity)
  for (let index = 0; index < pattern.count; index += 1) {
    const row = pattern.rows[index]
    if (row !== undefined) lump.add(row.seconds, rowControllerLoss(row))
  }
  heat.controller = heat.controllerFeed + lump.hottest()
}
