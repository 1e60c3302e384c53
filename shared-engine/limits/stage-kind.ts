import type { Evaluation } from '../cases/evaluation.ts'
import { mostStages } from '../cases/stage-duty.ts'
import type { Build } from '../entries/schema.ts'
import type { Machine } from '../machine/parts.ts'
import type { UnitSystem } from '../units/kinds.ts'
import type { LimitWorking } from '../workings/limit.ts'
import type { Ledger } from './ledger.ts'
import { listedLimit, type Limit, type LimitFacts } from './limit.ts'
import type { StageLimitName } from './stage.ts'

/** A limit of a kind of reduction as its folder writes it down; place and number come with the reduction. */
export interface StageLimitFacts extends Omit<LimitFacts, 'question' | 'lacking'> {
  /** As in the reduction's group: `shaftDiameterMm`. */
  readonly needs: readonly string[]
  /** As of every limit, for the reduction at a place. */
  readonly lacking?: (build: Build, place: number) => readonly string[] | null
  /** @param number of the reduction, counted from 1 */
  readonly working: (number: number) => LimitWorking
}

/** One limit of a kind, wherever in the machine it stands: by the reduction's place, counted from 0. */
type PlacedLimit = readonly Limit[]

/** What a kind of reduction has to hold. */
export interface StageKindLimits<Name extends string, Stage> {
  readonly byName: Readonly<Record<Name, PlacedLimit>>
  /**
   * Adds those that a reduction has. A method, so that a table of all kinds can be called with any reduction.
   *
   * @param place of the reduction, counted from 0
   */
  measure(ledger: Ledger, place: number, stage: Stage, e: Evaluation, machine: Machine): void
  /**
   * Sentences about what its limits lean on with this reduction.
   *
   * @param topSpeed rad/s of the driver at top speed; NaN where there is none
   * @param number of the reduction, counted from 1
   */
  remarks?(stage: Stage, topSpeed: number, number: number): readonly string[]
  /** What its shape decides, by name, in the unit that the name ends with. */
  shape?(stage: Stage, topSpeed: number): Readonly<Record<string, number | null>>
  /** What to buy for it, by name, in the unit that the name ends with. */
  fit?(stage: Stage): Readonly<Record<string, number | null>>
  /** The same in words. */
  order?(stage: Stage, system: UnitSystem): string
}

/** Of a reduction that has nothing to hold but its shaft. */
export const noStageLimits: StageKindLimits<never, unknown> = {
  byName: {},
  measure: () => {
    // Nothing to add.
  },
}

/**
 * The limits of a kind of reduction at every place, in the ledger's order.
 *
 * @param facts by the last word of their ids
 */
export function limitsOfStage<Name extends string>(
  facts: Readonly<Record<Name, StageLimitFacts>>,
): Readonly<Record<Name, PlacedLimit>> {
  const made = Object.entries<StageLimitFacts>(facts).map(([name, limit]) => [
    name,
    Array.from({ length: mostStages }, (_, place) => placed(name as StageLimitName, limit, place)),
  ])
  return Object.fromEntries(made) as Record<Name, PlacedLimit>
}

function placed(name: StageLimitName, facts: StageLimitFacts, place: number): Limit {
  const number = place + 1
  const { lacking, ...rest } = facts
  return listedLimit({
    ...rest,
    ...(lacking === undefined ? {} : { lacking: (build: Build) => lacking(build, place) }),
    id: `stage.${number}.${name}`,
    label: `${facts.label}, stage ${number}`,
    part: `stage.${number}`,
    question: 'hold',
    needs: facts.needs.map((entry) => `stages.${place}.${entry}`),
    working: facts.working(number),
  })
}

/** The limit at a place that the machine has. */
export function limitIn(limit: PlacedLimit, place: number): Limit {
  const here = limit[place]
  if (here === undefined) throw new Error(`no reduction at place ${place}`)
  return here
}
