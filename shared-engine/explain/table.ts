import type { Checked } from '../check.ts'
import { figureOf, type FigureName } from '../figures/table.ts'
import { limitsOf } from '../limits/table.ts'
import type { Working } from './working.ts'
import { cruiseWorkings } from './cruise.ts'
import { forceWorkings } from './force.ts'
import { groundWorkings } from './ground.ts'
import { heatWorkings } from './heat.ts'
import {
  controllerLimitWorkings,
  converterLimitWorking,
  motorLimitWorkings,
  packLimitWorkings,
} from './limits-electric.ts'
import { gearLimitWorkings } from './limits-gear.ts'
import { plainStageLimitWorkings } from './limits-stage.ts'
import { trackLimitWorkings } from './limits-track.ts'
import { vehicleLimitWorkings } from './limits-vehicle.ts'
import { limitSubject, type LimitSubject } from './margin.ts'
import { motorWorkings } from './motor.ts'
import { packWorkings } from './pack.ts'
import { runWorkings } from './run.ts'
import { speedWorkings } from './speed.ts'
import { written, type Subject } from './subject.ts'
import { trackWorkings } from './track.ts'
import { trainWorkings } from './train.ts'

/** Every figure's working; the type asks for all of them. */
const figureSubjects: Readonly<Record<FigureName, Subject>> = {
  ...trainWorkings,
  ...motorWorkings,
  ...packWorkings,
  ...speedWorkings,
  ...runWorkings,
  ...groundWorkings,
  ...forceWorkings,
  ...trackWorkings,
  ...heatWorkings,
  ...cruiseWorkings,
}

const commonLimits: Readonly<Record<string, LimitSubject>> = {
  ...motorLimitWorkings,
  ...controllerLimitWorkings,
  ...packLimitWorkings,
  ...trackLimitWorkings,
  ...vehicleLimitWorkings,
}

/** Limits that a kind of reduction has, beside its shaft. */
const stageLimits = { ...gearLimitWorkings, ...plainStageLimitWorkings } as const
type StageLimit = keyof typeof stageLimits

const limitsOfKind = {
  gear: ['bending', 'interference', 'contact-ratio', 'shaft'],
  belt: ['tension', 'shaft'],
  chain: ['tension', 'power', 'shaft'],
  fixed: ['shaft'],
} as const satisfies Record<string, readonly StageLimit[]>

/** The description of a limit on this machine; undefined where a machine of its shape cannot have it. */
function limitOn(checked: Checked, id: string): LimitSubject | undefined {
  if (!limitsOf(checked.machine).some((limit) => limit.id === id)) return undefined
  const converter = /^converter\.(\d+)\.current$/.exec(id)
  if (converter !== null) return converterLimitWorking(Number(converter[1]))
  const stage = /^stage\.(\d+)\.([a-z-]+)$/.exec(id)
  if (stage === null) return Object.hasOwn(commonLimits, id) ? commonLimits[id] : undefined
  const number = Number(stage[1])
  const kind = checked.machine.stages[number - 1]?.kind ?? 'fixed'
  const own: readonly StageLimit[] = limitsOfKind[kind]
  const name = own.find((limit) => limit === stage[2])
  return name === undefined ? undefined : stageLimits[name](number)
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
  if (figure !== undefined) return written(subject, figureSubjects[figure.name], checked)
  const limit = limitOn(checked, subject)
  return limit === undefined ? null : written(subject, limitSubject(subject, limit), checked)
}
