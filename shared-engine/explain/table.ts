import type { Checked } from '../check.ts'
import { figureOf, type FigureName } from '../figures/table.ts'
import { limitsOf } from '../limits/table.ts'
import type { Working } from '../workings/working.ts'
import { brakingWorkings } from '../workings/braking.ts'
import { burstWorkings } from '../workings/bursts.ts'
import { coolantWorkings } from '../workings/coolant.ts'
import { balanceWorkings } from '../workings/balance.ts'
import { cruiseWorkings } from '../workings/cruise.ts'
import { forceWorkings } from '../workings/force.ts'
import { groundWorkings } from '../workings/ground.ts'
import { heatWorkings } from '../workings/heat.ts'
import { limitSubject } from './limit.ts'
import { motorWorkings } from '../workings/motor.ts'
import { packWorkings } from '../workings/pack.ts'
import { patternWorkings } from '../workings/pattern.ts'
import { runWorkings } from '../workings/run.ts'
import { speedWorkings } from '../workings/speed.ts'
import { written, type Subject } from '../workings/subject.ts'
import { jamWorkings } from '../workings/jam.ts'
import { trackWorkings } from '../workings/track.ts'
import { wiringWorkings } from '../workings/wiring.ts'
import { trainWorkings } from '../workings/train.ts'

/** Every figure's working; the type asks for all of them. */
const figureSubjects: Readonly<Record<FigureName, Subject>> = {
  ...trainWorkings,
  ...motorWorkings,
  ...packWorkings,
  ...speedWorkings,
  ...runWorkings,
  ...groundWorkings,
  ...forceWorkings,
  ...balanceWorkings,
  ...trackWorkings,
  ...patternWorkings,
  ...burstWorkings,
  ...brakingWorkings,
  ...jamWorkings,
  ...heatWorkings,
  ...coolantWorkings,
  ...wiringWorkings,
  ...cruiseWorkings,
}

/**
 * How a figure or a limit came about: formula, numbers put in, state, source, assumptions.
 *
 * @param checked a build worked out
 * @param subject a figure's name or a limit's id
 * @returns the working, its last step the figure's value or the limit's margin; one with `missing` where that does not
 * exist; null for a name that this machine cannot have
 * @throws where the working contradicts the engine's own data: a bug of ours
 * *Source:* each working names its own.
 * @example workingOf(checked, 'freeRpm')?.steps.at(-1)?.value === checked.figures.freeRpm // true
 */
export function workingOf(checked: Checked, subject: string): Working | null {
  const figure = figureOf(subject)
  if (figure !== undefined)
    return written(subject, figureSubjects[figure.name], checked, checked.figures[figure.name] ?? null)
  const limit = limitsOf(checked.machine).find(({ id }) => id === subject)
  if (limit === undefined) return null
  const margin = checked.limits.find(({ id }) => id === subject)?.margin ?? null
  return written(subject, limitSubject(checked, limit), checked, margin)
}
