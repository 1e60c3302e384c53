import { rowRippleAmps } from '../cases/wiring-step.ts'
import { worstDuty } from '../motor/bus-ripple.ts'
import type { RowState } from '../vehicle/row-state.ts'
import type { Draft } from './draft.ts'
import { meanOfRows } from './pattern-rows.ts'
import { inCase, needing, type Subject } from './subject.ts'

const switching = 'volt-second and charge balance over one switching period'

/** `I_b`, `delta_0` and the cap: a burst, and the duty that it needs at standstill. */
function burst(d: Draft): void {
  d.figure('I_b', 'burstMotorAmps')
  const { drive } = d.checked.evaluation
  d.given('R_s', ['ohms', 'motor and controller in service'], drive.seriesResistance)
  d.given('V_0', ['volts', 'pack volts with the accessories alone'], drive.volts)
  d.figure('R_b', 'packOhm')
  d.entry('M', 'motor.count')
  d.step('c', ['volts', 'volts that the current needs at standstill'], 'I_b * R_s')
  const root = '2 * c / (V_0 + sqrt(max(0, V_0^2 - 4 * M * I_b * R_b * c)))'
  d.step('delta_0', ['fraction', 'duty of the burst at standstill'], root)
  d.entry('delta_c', 'controller.throttleCapPercent')
}

/** `delta`: the duty nearest to the worst that the burst passes on its way to the cap. */
function nearest(d: Draft, worst: number): void {
  d.given('delta_w', ['fraction', 'duty of the largest ripple'], worst)
  const told = ['fraction', 'duty nearest to it on the burst’s way up'] as const
  d.step('delta', told, 'min(max(delta_w, min(delta_0, delta_c)), delta_c)')
}

/** `s`: ripple for each ampere at `delta`. */
function share(d: Draft): void {
  const told = ['none', 'ripple for each ampere of the motor'] as const
  if (d.checked.machine.controller.commutation === 'block') {
    d.step('s', told, 'sqrt(delta * (1 - delta))')
    return
  }
  d.step('m', ['none', 'depth of modulation'], '2 * delta / sqrt(3)')
  d.step('s', told, 'sqrt(2 / 3 * 2 * m * (sqrt(3) / (4 * pi) + sqrt(3) / pi - 9 * m / 16))')
}

const rippleSource =
  'block: square-wave current, elementary; sine: Kolar and Round, IEE Proc. EPA 153 (2006), power factor 1'

const busRippleVolts: Subject = {
  title: 'How much the controller’s supply swings at its switching frequency in a burst, peak to peak.',
  state: 'the greatest burst of one motor, from standstill up to the throttle cap',
  source: switching,
  missing: needing('controller.pwmKhz', 'controller.busCapacitanceMicrofarad'),
  write: (d) => {
    burst(d)
    nearest(d, 0.5)
    d.entry('f', 'controller.pwmKhz')
    d.entry('C', 'controller.busCapacitanceMicrofarad')
    d.entry('R_e', 'controller.busEsrMilliohm')
    d.step('V_r', ['volts', 'ripple of the supply'], 'I_b * (delta * (1 - delta) / (f * C) + R_e)')
  },
}

const rippleAmps: Subject = {
  title: 'The ripple current that the capacitors of one controller carry through the pattern, RMS.',
  state: inCase('pattern'),
  source: rippleSource,
  write: (d) => {
    const { evaluation, machine } = d.checked
    const { commutation } = machine.controller
    const averaged = {
      symbol: 'I_c',
      kind: 'amps',
      name: 'ripple current, I √(δ(1 − δ)) or that of three sines',
      of: (row: RowState) => rowRippleAmps(row, commutation),
    } as const
    meanOfRows(d, averaged, ['I_C', 'ripple current of the capacitors'], 2, evaluation.wiring.rippleAmps)
  },
}

const rippleWorstAmps: Subject = {
  title: 'The ripple current that the capacitors of one controller carry in a burst, RMS.',
  state: 'the greatest burst of one motor, at its worst duty',
  source: rippleSource,
  write: (d) => {
    burst(d)
    nearest(d, worstDuty[d.checked.machine.controller.commutation])
    share(d)
    d.step('I_C', ['amps', 'ripple current of the capacitors'], 'I_b * s')
  },
}

const motorRippleAmps: Subject = {
  title: 'How much the motor’s current swings at the switching frequency, peak to peak.',
  state: 'pack full, at the duty nearest to one half that a burst passes',
  source: switching,
  missing: needing('controller.pwmKhz', 'motor.inductanceMicrohenry'),
  write: (d) => {
    burst(d)
    nearest(d, 0.5)
    d.given('V_full', ['volts', 'pack volts at rest, full'], d.checked.machine.pack.fullVolts)
    d.entry('L_m', 'motor.inductanceMicrohenry')
    d.entry('f', 'controller.pwmKhz')
    d.step('I_r', ['amps', 'ripple of the current'], 'V_full * delta * (1 - delta) / (L_m * f)')
  },
}

export const wiringWorkings = {
  busRippleVolts,
  rippleAmps,
  rippleWorstAmps,
  motorRippleAmps,
} satisfies Record<string, Subject>
