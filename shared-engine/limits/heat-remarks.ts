import type { Evaluation } from '../cases/evaluation.ts'
import { setHeatTimes } from '../cases/heat-times.ts'
import { setTravel } from '../cases/travel.ts'
import type { Machine } from '../machine/parts.ts'
import { knowsSwitching } from '../motor/controller-loss.ts'
import { withinMargin } from './limit.ts'

/** What there is to say about the heat of a drive pattern, in plain sentences. */
export const heatNotes = {
  'label-and-resistance':
    'The motor’s label current and its thermal resistance can’t both be true: one of them is wrong.',
  'amps-within-heat-over':
    'The current is within the label, but the winding gets too hot: iron loss at this speed, not the load.',
  'short-rows': 'Some rows are shorter than getting up to speed takes: drive the pattern through time.',
  'motor-ripple':
    'The current ripple in the motor is large: a higher PWM frequency or more inductance; losses are more than shown.',
  'controller-at-least': 'The controller’s heat counts conduction alone: at least this much.',
  'no-equilibrium': 'Rows in percent of top speed count as standing: there is no top speed.',
} as const

type HeatNote = keyof typeof heatNotes

const applies: Readonly<Record<HeatNote, (machine: Machine, e: Evaluation) => boolean>> = {
  'label-and-resistance': (machine, { times, heat, pattern }) => {
    setHeatTimes(times, machine, heat, pattern)
    return times.labelRunaway || times.label > machine.motor.maxTemperature
  },
  'amps-within-heat-over': ({ motor }, { heat, pattern }) =>
    heat.end.hottest > motor.maxTemperature &&
    motor.continuousAmps !== null &&
    1 - pattern.motorAmpsRms / motor.continuousAmps >= withinMargin &&
    pattern.ironLoss > pattern.copperLoss,
  'short-rows': (machine, e) => {
    const { pattern, run } = e
    setTravel(e, machine)
    return pattern.rows
      .slice(0, pattern.count)
      .some(({ straight, seconds }) => straight.groundSpeed > 0 && seconds < run.secondsTo80)
  },
  'motor-ripple': (_machine, { wiring, pattern }) => wiring.motorRippleAmps > pattern.motorAmpsRms / 2,
  'controller-at-least': ({ controller }) =>
    controller.thermalResistance !== null && !knowsSwitching(controller),
  'no-equilibrium': ({ service }, { top }) =>
    !top.exists && service.pattern.rows.some(({ kind }) => kind === 'topShare'),
}

/** The notes that apply. *Source:* `docs/model.md` §7. */
export function heatRemarks(machine: Machine, e: Evaluation): string[] {
  return (Object.keys(heatNotes) as HeatNote[])
    .filter((note) => applies[note](machine, e))
    .map((note) => heatNotes[note])
}
