import { dutyForAmps, noLoadAmpsAt } from '../motor/drive-line.ts'
import { shearShareInverse } from '../ground/soil-shear.ts'
import type { Evaluated } from '../figures/evaluated.ts'
import { driveTrain, motorModel, noLoadAt, torqueConstant } from './circuit.ts'
import { usableCharge } from './pattern.ts'
import type { Draft } from './draft.ts'
import { shearStrength, soilBooks, soilThrustAt, standingResistance } from './footing.ts'
import { air, dutyForCurrent, internalDrag } from './motion.ts'
import { firstOf, needingTop, type Missing, type Subject } from './subject.ts'

const level = 'level travel at half of the top speed, on this ground, at the given charge and temperatures'

/** Numbers of level travel that the evaluation keeps only where the speed can be held. */
function cruiseNumbers({ machine, evaluation }: Evaluated) {
  const { cruise, line, drive } = evaluation
  const drag = machine.track.internalDrag + machine.track.internalDragPerSpeed * cruise.beltSpeed
  const torque = (cruise.thrust + drag) / line.thrustPerTorque
  const motorSpeed = cruise.beltSpeed * line.motorPerBelt
  const noLoad = noLoadAmpsAt(drive, motorSpeed)
  const amps = torque / drive.torqueConstant + noLoad
  return { torque, motorSpeed, noLoad, amps, duty: dutyForAmps(drive, amps, motorSpeed) }
}

/** Why half of the top speed cannot be held on the level, or nothing is drawn there. */
function notHeld(checked: Evaluated): Missing | null {
  const { cruise, level: footing, drive } = checked.evaluation
  if (!Number.isNaN(cruise.packAmps)) return null
  const { amps, duty } = cruiseNumbers(checked)
  if (cruise.thrust > footing.gripThrust)
    return { why: 'on the level that speed takes more thrust than grip gives.' }
  if (amps > drive.currentLimit)
    return { why: 'on the level that speed takes more current than the limit lets through.' }
  if (duty <= drive.duty)
    return { why: 'on the level the pack gives nothing at that speed, so that it never runs out.' }
  return { why: 'on the level that speed takes more throttle than the cap allows.' }
}

const cruiseMissing = firstOf(needingTop, notHeld)

/** `v`, `F`, `v_b`: speed, thrust and belt speed. */
function travel(d: Draft): void {
  d.figure('v_top', 'topSpeedMps')
  d.step('v', ['speed', 'half of the top speed'], 'v_top / 2')
  standingResistance(d, 'level', 'R_l')
  air(d)
  d.step('F', ['force', 'thrust, equal to resistance'], 'R_l + rho * C_d * A * v^2 / 2')
  slip(d)
  d.step('v_b', ['speed', 'belt speed'], 'v / (1 - i)')
}

/** `i`: as entered, or what the soil asks for to pass the thrust. */
function slip(d: Draft): void {
  const { machine, evaluation } = d.checked
  const { cruise, level: footing } = evaluation
  if (machine.ground.model === 'coefficient') {
    d.entry('i', 'ground.slipPercent')
    return
  }
  d.source(soilBooks)
  shearStrength(d, 'level')
  const x = shearShareInverse(cruise.thrust / footing.shearStrength)
  const words = 'the x at which the soil’s thrust, S_s (1 − (1 − exp(−x)) / x), equals F'
  d.found('x', ['none', 'slip over the length of the patch, in shear displacements'], words, x)
  const check = 'the same as F'
  soilThrustAt(d, 'F_x', check)
  d.step('i', ['fraction', 'slip'], 'x * K / L')
}

const cruiseHalfTopPackAmps: Subject = {
  title: 'What the pack gives, accessories included, to hold half of the top speed on the level.',
  state: level,
  source: motorModel,
  missing: cruiseMissing,
  write: (d) => {
    travel(d)
    internalDrag(d)
    driveTrain(d)
    d.step('T', ['torque', 'torque of one motor'], '(F + D) * r / (M * G * eta)')
    d.step('omega', ['angularSpeed', 'motor speed'], 'v_b * G / r')
    torqueConstant(d, 'service')
    noLoadAt(d)
    d.step('I', ['amps', 'current of one motor'], 'T / K_t + I_0')
    dutyForCurrent(d, 'omega')
    d.step('I_p', ['amps', 'pack current'], 'M * delta_i * I + I_a')
  },
}

const cruiseHalfTopMinutes: Subject = {
  title: 'How long the charge lasts at half of the top speed on the level, down to the reserve.',
  state: level,
  source: 'charge over current',
  assumptions: ['The pack gives its labelled charge at any current.'],
  missing: cruiseMissing,
  write: (d) => {
    usableCharge(d)
    d.figure('I_p', 'cruiseHalfTopPackAmps')
    d.step('t', ['duration', 'time to the reserve'], 'Q / I_p')
    d.step('t_m', ['minutes', 'time to the reserve'], 't / 60')
  },
}

const cruiseHalfTopKilometres: Subject = {
  title: 'How far the charge carries the machine at half of the top speed on the level, down to the reserve.',
  state: level,
  source: 'time times speed',
  assumptions: ['The pack gives its labelled charge at any current.'],
  missing: cruiseMissing,
  write: (d) => {
    d.figure('t_m', 'cruiseHalfTopMinutes')
    d.figure('v_top', 'topSpeedMps')
    d.step('v', ['speed', 'half of the top speed'], 'v_top / 2')
    d.step('s', ['kilometres', 'distance to the reserve'], 't_m * 60 * v / 1000')
  },
}

export const cruiseWorkings = {
  cruiseHalfTopPackAmps,
  cruiseHalfTopMinutes,
  cruiseHalfTopKilometres,
} satisfies Record<string, Subject>
