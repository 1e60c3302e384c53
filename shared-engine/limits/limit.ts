import type { Evaluation } from '../cases/evaluation.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import type { Build } from '../entries/schema.ts'
import type { QuantityKind } from '../units/kinds.ts'
import type { LimitWorking } from '../workings/limit.ts'
import { isDecisive, type LimitGroup } from './group.ts'
import type { LimitId } from './id.ts'

/**
 * A maximum may not be passed, a minimum not fallen short of; a temperature counts from its sink, a lowest one (`coldness`)
 * from a room's.
 */
export type LimitSense = 'maximum' | 'minimum' | 'temperature' | 'coldness'

/** Whether what is compared may not be less than allowed. */
export function isLeast(sense: LimitSense | undefined): boolean {
  return sense === 'minimum' || sense === 'coldness'
}

export type LimitUnit =
  | 'rpm'
  | 'A'
  | 'V'
  | 'degC'
  | 'Pa'
  | 'N'
  | 'W'
  | 'm/s'
  | 's'
  | 'K'
  | 'm'
  | 'N m'
  | 'deg'
  | 'h'
  | 'mm/min'
  | '1'

export type Standing = 'within' | 'near' | 'over'

/** Part of the machine that a limit, a field or a drawing belongs to. Stages count from 1. */
export type PartName =
  | 'pack'
  | 'controller'
  | 'motor'
  | `stage.${number}`
  | 'track'
  | 'vehicle'
  | 'ground'
  | 'cooling'
  | 'accessories'
  | 'service'

/** Question of the window whose plots show a limit's place. */
export type Question = 'fast' | 'hold' | 'hot'

/** Entries that a build lacks for a limit; null where the limit cannot apply to it. */
export type Lacking = (build: Build, evaluation: Evaluation) => readonly string[] | null

/** What a limit compares, and where it shows. */
export interface LimitFacts {
  /** In a builder's words: "Tooth shear". */
  readonly label: string
  readonly group: LimitGroup
  readonly question: Question
  readonly sense: LimitSense
  readonly unit: LimitUnit
  readonly kind: QuantityKind
  /** Optional entries without which it is left out of the ledger. */
  readonly needs: readonly string[]
  /**
   * Entries that are absent where it is left out, for the list of what was not judged; null: it cannot apply to this
   * build, or is never listed. By default those of `needs`.
   */
  readonly lacking?: Lacking
}

/** One line of the ledger, whole: what it is, and how its working is written. */
export interface Limit extends LimitFacts {
  /** Its place among all limits, which a ledger writes down in its stead. */
  readonly number: number
  readonly id: LimitId
  readonly part: PartName
  readonly lacking: Lacking
  readonly working: LimitWorking
}

/** The entries of a list that a build does not give; an entry of an absent group counts as the group. */
export function absentOf(build: Build, paths: readonly string[]): readonly string[] {
  const absent = paths.filter((path) => valueAt(build, keysOf(path)) === undefined)
  return absent.filter((path) => !absent.some((group) => path.startsWith(`${group}.`)))
}

const listed: Limit[] = []

/** By number: whether passing a limit decides. Booleans in a list, since they are looked up for every row of a ledger. */
const deciding: boolean[] = []

/** Gives a limit its number. Every limit is made here, all of one shape, when its file is read. */
export function listedLimit(limit: Omit<Limit, 'number' | 'lacking'> & Pick<LimitFacts, 'lacking'>): Limit {
  const { id, label, group, part, question, sense, unit, kind, needs, lacking, working } = limit
  const made = {
    number: listed.length,
    ...{ id, label, group, part, question, sense, unit, kind, needs },
    lacking: lacking ?? ((build: Build) => absentOf(build, needs)),
    working,
  }
  listed.push(made)
  deciding.push(isDecisive(group))
  return made
}

/** The limit of a number. */
export function limitOfNumber(number: number): Limit | undefined {
  return listed[number]
}

/** How many limits there are; their numbers are those below. */
export function limitsListed(): number {
  return listed.length
}

/** Whether the limit of a number is one of ordinary use, which {@link isDecisive} says. */
export function decides(number: number): boolean {
  return deciding[number] === true
}

/** Margin from which a limit counts as kept with something in hand. *Source:* common practice, no source. */
export const withinMargin = 0.2

/** Standing of a margin; −Infinity, a margin that can't be formed, is over. */
export function standingOf(margin: number): Standing {
  if (margin >= withinMargin) return 'within'
  return margin >= 0 ? 'near' : 'over'
}
