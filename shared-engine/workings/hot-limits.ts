import { labelSource } from './currents.ts'
import type { Draft } from './draft.ts'
import { capacities, motorHeatNeeds, ownWay, runaway, sink, wayWords } from './heat.ts'
import type { LimitWorking } from './limit.ts'
import { steadyRows } from './pattern-rows.ts'
import { firstOf } from './subject.ts'

const asHot =
  'what cools it is as hot as the limit already: there is no margin to form, and it counts as over.'

export const motorTemperatureWorking: LimitWorking = {
  title:
    'The hotter of winding and case in the pattern against the limit, counted from what cools the motor.',
  source: `heat balance of winding and case to their sink; ${labelSource}`,
  assumptions: [steadyRows],
  missing: firstOf(motorHeatNeeds, runaway),
  unformed: asHot,
  write: (d) => {
    d.figure('T', 'steadyMotorC')
    d.entry('T_max', 'motor.maxTemperatureC')
    sink(d)
    return { actual: 'T', allowed: 'T_max', sink: 'T_s' }
  },
}

export const controllerTemperatureWorking: LimitWorking = {
  title: 'The controller’s hottest moment in the pattern against its limit, counted from the air.',
  source: `heat balance of a lump to its sink; ${labelSource}`,
  assumptions: [steadyRows],
  missing: (checked) => (checked.machine.cooling === null ? null : runaway(checked)),
  unformed: asHot,
  write: (d) => {
    d.figure('T', 'steadyControllerC')
    d.entry('T_max', 'controller.maxTemperatureC')
    d.entry('T_air', 'ground.airTemperatureC')
    return { actual: 'T', allowed: 'T_max', sink: 'T_air' }
  },
}

/** Where the burst begins, and what the motor's heat meets. */
function burstStart(d: Draft): void {
  d.figure('T_0', 'steadyMotorC')
  ownWay(d)
  d.entry('R_20', 'motor.resistanceMilliohm')
  sink(d)
}

export const burstHeatWorking: LimitWorking = {
  title: 'How long a burst lasts against how long the motor bears it from the pattern’s hottest moment.',
  source: 'two linear heat balances, solved; the time is a root',
  assumptions: ['No iron loss in a burst: it is at standstill.'],
  missing: firstOf(motorHeatNeeds, capacities, ({ evaluation }) => {
    const { launch, pivot } = evaluation.times
    const never = Number.isNaN(launch.warmSeconds) && Number.isNaN(pivot.warmSeconds)
    return never ? { why: 'the motor bears jam and pivot turn for ever.' } : null
  }),
  unformed: 'the motor is at its limit before the burst begins: it counts as over.',
  write: (d, row) => {
    d.entry('t_b', 'service.burstSeconds')
    d.entry('T_max', 'motor.maxTemperatureC')
    const { times } = d.checked.evaluation
    const load = row.case === 'pivot' ? times.pivot : times.launch
    const told = ['amps', 'current of one motor in the burst'] as const
    d.figure('I_s', row.case === 'pivot' ? 'pivotMotorAmps' : 'burstMotorAmps')
    d.figure('F_max', 'gripThrustN')
    d.found('I', told, 'as I_s and F_max ask for it, with magnets as hot as T_max', load.amps)
    burstStart(d)
    const words = `with I through R_20 from the pattern’s worst row end, T_0, over T_s to T_max behind ${wayWords(d.checked)}, or from the air’s temperature where there is no steady state`
    d.found('t', ['duration', 'time that the motor bears it'], words, load.warmSeconds)
    return { actual: 't_b', allowed: 't' }
  },
}

export const overVoltsWorking: LimitWorking = {
  title: 'The most volts at the controller, with half of the bus ripple, against the lesser of the ratings.',
  source: `Ohm’s law; ${labelSource}`,
  write: (d, row) => {
    const { machine } = d.checked
    const { controller, pack } = machine
    if (row.case === 'brake') d.figure('V_p', 'brakePackVolts')
    else d.row('V_p', 'pack.chemistry', ['volts', 'full pack at rest'], pack.fullVolts)
    const ripple = d.checked.figures.busRippleVolts
    if (ripple === null) d.step('V_a', ['volts', 'at the controller'], 'V_p')
    else {
      d.figure('V_r', 'busRippleVolts')
      d.step('V_a', ['volts', 'at the controller'], 'V_p + V_r / 2')
    }
    if (controller.maxVolts !== null) d.entry('V_c', 'controller.maxVolts')
    if (controller.busRatedVolts !== null) d.entry('V_k', 'controller.busRatedVolts')
    const both = controller.maxVolts !== null && controller.busRatedVolts !== null
    const one = controller.maxVolts === null ? 'V_k' : 'V_c'
    d.step('V_max', ['volts', 'lesser of the ratings'], both ? 'min(V_c, V_k)' : one)
    return { actual: 'V_a', allowed: 'V_max' }
  },
}
