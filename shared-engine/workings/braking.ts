import type { Evaluated } from '../figures/evaluated.ts'
import type { Draft } from './draft.ts'
import { mass } from './footing.ts'
import { firstOf, inCase, needingTop, running, type Missing, type Subject } from './subject.ts'

const newton =
  'Newton’s second law, integrated (Gauss-Legendre on pieces that end where a brake reaches its limit)'
const gears = 'The gears take the same share when the track drives them.'

function coasts({ machine }: Evaluated): Missing | null {
  return machine.controller.brakeAmps > 0
    ? null
    : { why: 'it coasts: no braking current is entered (controller.brakeAmps).' }
}

/** `v`, `m`, `m_e` and what brakes. */
function brakes(d: Draft): void {
  d.assume(gears)
  d.figure('v', 'topSpeedMps')
  d.entry('I_br', 'controller.brakeAmps')
  d.entry('F_b', 'vehicle.brakeForceN')
  mass(d)
  d.figure('F_m0', 'startThrustN')
  d.figure('F_max', 'gripThrustN')
  d.figure('R_0', 'groundResistanceN')
  d.figure('rho_air', 'airDensity')
  d.entry('D_0', 'track.internalDragN')
  d.entry('D_1', 'track.internalDragNPerMps')
  d.figure('m_e', 'equivalentMassKg')
}

const stateOfStop =
  'a stop from top speed on the level with all brakes, no tow, at the given charge and temperatures'
const slowing =
  'a = the lesser of (motors with I_br at most + D_0 + D_1 v + F_b + R) / m_e and (F_max + R) / m, R and motors by what gives R_0, rho_air and F_m0; the motors take the first part of what the grip leaves'

function noStop({ evaluation }: Evaluated): Missing | null {
  return Number.isNaN(evaluation.braking.level.metres)
    ? { why: 'nothing holds it back at a standstill, so it never quite stops.' }
    : null
}

function runsAway({ evaluation }: Evaluated): Missing | null {
  return Number.isNaN(evaluation.braking.downhill.metres)
    ? { why: 'the slope pulls harder than brakes, drag and ground hold: it does not stop downhill.' }
    : null
}

const stop = (
  title: string,
  told: readonly ['distance' | 'time' | 'energy', string],
  words: string,
  of: (checked: Evaluated) => number,
): Subject => ({
  title,
  state: stateOfStop,
  source: newton,
  missing: firstOf(needingTop, noStop),
  write: (d) => {
    brakes(d)
    d.found('x', told, `${words}; ${slowing}`, of(d.checked))
  },
})

export const brakingWorkings = {
  brakeMotorAmps: {
    title: 'What each motor feeds back as a stop from top speed begins.',
    state: inCase('brake'),
    source: 'Kirchhoff’s law of the shorted motor; statics of the ground',
    missing: firstOf(coasts, needingTop),
    write: (d) => {
      brakes(d)
      const words = `at v the least of I_br, a short circuit’s and what the grip leaves to the motors; ${slowing}`
      d.found('I', ['amps', 'current fed back'], words, d.checked.evaluation.braking.motorAmps)
    },
  },
  brakeChargeAmps: {
    title: 'What goes into a full pack as a stop from top speed begins.',
    state: inCase('brake'),
    source: 'Kirchhoff’s laws over one switching period',
    missing: firstOf(coasts, needingTop),
    write: (d) => {
      d.entry('M', 'motor.count')
      d.figure('I', 'brakeMotorAmps')
      d.row('V_full', 'pack.chemistry', ['volts', 'full pack at rest'], d.checked.machine.pack.fullVolts)
      d.figure('R_b', 'packOhm')
      d.figure('v', 'topSpeedMps')
      d.figure('F_m0', 'startThrustN')
      const words = 'M δ I with the duty that passes I at v from V_full behind R_b, by what gives F_m0 too'
      d.found('I_c', ['amps', 'charging current'], words, d.checked.evaluation.braking.chargeAmps)
    },
  },
  brakePackVolts: {
    title: 'The full pack’s volts then.',
    state: inCase('brake'),
    source: 'Ohm’s law',
    missing: firstOf(coasts, needingTop),
    write: (d) => {
      d.row('V_full', 'pack.chemistry', ['volts', 'full pack at rest'], d.checked.machine.pack.fullVolts)
      d.figure('I_c', 'brakeChargeAmps')
      d.figure('R_b', 'packOhm')
      d.step('V_b', ['volts', 'pack volts while braking'], 'V_full + I_c * R_b')
    },
  },
  stopMetres: stop(
    'How far it goes from top speed to a stop.',
    ['distance', 'distance of the stop'],
    'the integral of v / a over speed from v to 0',
    ({ evaluation }) => evaluation.braking.level.metres,
  ),
  stopSeconds: stop(
    'How long it takes from top speed to a stop.',
    ['time', 'time of the stop'],
    'the integral of 1 / a over speed from v to 0',
    ({ evaluation }) => evaluation.braking.level.seconds,
  ),
  stopEnergyBackJ: stop(
    'What comes back to the pack in that stop.',
    ['energy', 'energy fed back'],
    'the integral of M I (ω K_t − I R_s) / a over speed from v to 0',
    ({ evaluation }) => evaluation.braking.level.energyBack,
  ),
  stopDownhillMetres: {
    title: 'How far it goes from top speed to a stop down the build’s slope.',
    state: 'a stop down the slope with all brakes, no tow, at the given charge and temperatures',
    source: newton,
    missing: firstOf(needingTop, runsAway),
    write: (d) => {
      brakes(d)
      d.entry('grade', 'ground.gradePercent')
      const words = `down grade, the integral of v / a over speed from v to 0; ${slowing}`
      d.found('x', ['distance', 'distance of the stop'], words, d.checked.evaluation.braking.downhill.metres)
    },
  },
  creepMps: {
    title: 'How fast it creeps down the slope with its motors shorted and no other brake.',
    state: running,
    source: 'torque of a shorted motor, K_t² ω/R_s, against the slope’s pull',
    assumptions: [gears],
    write: (d) => {
      d.entry('grade', 'ground.gradePercent')
      d.figure('R_0', 'groundResistanceN')
      d.figure('F_m0', 'startThrustN')
      d.entry('R_20', 'motor.resistanceMilliohm')
      d.entry('R_esc', 'controller.resistanceMilliohm')
      d.entry('V_nl', 'motor.noLoadVolts')
      d.entry('D_0', 'track.internalDragN')
      d.entry('D_1', 'track.internalDragNPerMps')
      const words =
        'on grade, the slope’s pull by what gives R_0, less D_0, drag, friction and iron over what each m/s of creep adds, D_1 and the shorted motors’ by R_20, R_esc, V_nl and what gives F_m0; 0 where it stands'
      d.found('v_c', ['speed', 'creep'], words, d.checked.evaluation.braking.creepSpeed)
    },
  },
} satisfies Record<string, Subject>
