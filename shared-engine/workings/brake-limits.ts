import type { LimitWorking } from './limit.ts'

export const brakeHoldWorking: LimitWorking = {
  title: 'What brakes and grip hold at the steepest pull of the pattern’s rows against that pull.',
  source: 'statics of the machine on its slope',
  assumptions: ['The gears take the same share when the track drives them.'],
  missing: () => ({ why: 'no row of the pattern is driven by its slope.' }),
  write: (d) => {
    const { braking } = d.checked.evaluation
    d.entry('I_br', 'controller.brakeAmps')
    d.entry('F_b', 'vehicle.brakeForceN')
    const words =
      'the lesser of the grip and motors (I_br at most), drag and F_b together, of the row where they are least enough'
    d.found('F_h', ['force', 'what the brakes hold'], words, braking.holdForce)
    d.found('F_d', ['force', 'what pulls it down'], '−R(v) of that row', braking.holdAsked)
    return { actual: 'F_h', allowed: 'F_d' }
  },
}

export const parkWorking: LimitWorking = {
  title: 'What the wheel brake and the ground hold on the slope, motors off, against what pulls.',
  source: 'statics of the machine on its slope',
  missing: ({ machine }) =>
    machine.vehicle.brakeForce > 0
      ? { why: 'nothing pulls: there is no slope and no tow.' }
      : { why: 'there is no wheel brake (vehicle.brakeForceN).' },
  write: (d) => {
    const { evaluation, machine } = d.checked
    const { footing } = evaluation
    d.figure('F_max', 'gripThrustN')
    d.entry('F_b', 'vehicle.brakeForceN')
    d.entry('D_0', 'track.internalDragN')
    d.given('R_g', ['force', 'rolling or compaction, and skis'], footing.groundResistance)
    d.step('F_h', ['force', 'what holds it'], 'min(F_max, F_b + D_0) + R_g')
    const pull = footing.standingResistance - footing.groundResistance - machine.vehicle.towForce
    d.given('F_s', ['force', 'the slope’s pull'], pull)
    d.entry('F_t', 'vehicle.towForceN')
    d.step('F_d', ['force', 'what pulls it down'], 'F_s + F_t')
    return { actual: 'F_h', allowed: 'F_d' }
  },
}
