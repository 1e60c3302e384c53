import { failed, succeeded } from '../mistakes/mistake.ts'
import type { Mistake, Result } from '../mistakes/mistake.ts'
import { oneLine } from '../mistakes/shown.ts'
import { differenceToEngine, toEngine, unitOf, unitsOffered } from './convert.ts'
import type { QuantityKind } from './kinds.ts'
import { kindUnits } from './table.ts'
import { termsOf } from './entry-sum.ts'
import { tokensOf } from './entry-tokens.ts'

/** A tolerance as typed: a share of the value, or a difference in engine units. */
export type EntryTolerance = { readonly plusMinusPercent: number } | { readonly plusMinus: number }

/** What a builder typed into a field, understood. */
export interface EntryReading {
  /** In engine units (SI; see QuantityKind). */
  readonly value: number
  /** As typed, without spaces round it. */
  readonly text: string
  /** Symbol of the unit typed, or of the one that was taken because none was. */
  readonly unit: string
  readonly tolerance?: EntryTolerance
}

/** Where an entry stands, for its mistakes. */
export interface EntryPlace {
  /** Unit that a bare number is in; absent: the bench unit of the kind. */
  readonly unit?: string
  readonly path?: string
  /** The value that stays in force if this one is refused. */
  readonly kept?: string
}

type Trouble = Pick<Mistake, 'code' | 'value' | 'allowed'>
interface Amount {
  readonly value: number
  readonly unit: string
}

const longest = 200
const plusMinus = /±|\+\s*\/\s*[-−]|\+\s?-(?=[\s\d.,])/

/**
 * Reads what a builder types: a number or a simple sum, in any unit of the kind, with a tolerance if wanted.
 *
 * `1 in`, `3/8 in`, `1 3/8 in`, `25.4`, `0.8 Nm`, `12+4`, `1 in + 3 mm`, `1,5`, `31 400`, `40 ± 5 %`, `9 +- 0.2 mm`.
 * A comma that could be read both ways (`1,234`) is refused with the question which; so is a tolerance in % of an entry
 * that is itself in %, unless it says `of it` or `points`.
 *
 * @param typed at most 200 characters
 * @param kind not `text`
 * @param place where it stands: the unit of bare numbers, and path and kept value for mistakes
 * @returns the reading; whether the value is in the field's range is not asked here
 * @example readEntry('3/8 in ± 5 %', 'length') // { ok: true, value: { value: 0.009525, text: '3/8 in ± 5 %', unit: 'in', tolerance: { plusMinusPercent: 5 } } }
 */
export function readEntry(typed: string, kind: QuantityKind, place: EntryPlace = {}): Result<EntryReading> {
  const text = typed.trim()
  const refuse = (trouble: Trouble): Result<EntryReading> =>
    failed([
      { ...trouble, value: oneLine(trouble.value, 60), path: place.path ?? '', kept: place.kept ?? '' },
    ])
  if (text === '' || text.length > longest) return refuse(notUnderstood(text, kind))
  const [valueText = '', toleranceText, ...more] = text.split(plusMinus)
  if (more.length > 0) return refuse(notUnderstood(text, kind))
  if (valueText.trim() === '') return refuse(notUnderstood(text, kind))
  const bare = unitBehind(toleranceText ?? '', kind) ?? place.unit ?? kindUnits[kind].bench
  const amount = amountOf(valueText, kind, bare, toEngine)
  if ('code' in amount) return refuse(amount)
  const reading = { value: amount.value, text, unit: amount.unit }
  if (toleranceText === undefined) return succeeded(reading)
  const tolerance = toleranceOf(toleranceText, kind, amount.unit)
  return 'code' in tolerance ? refuse(tolerance) : succeeded({ ...reading, tolerance })
}

function notUnderstood(value: string, kind: QuantityKind): Trouble {
  const units = unitsOffered(kind).filter((symbol) => symbol !== '')
  const inUnits = units.length === 0 ? '' : `, in ${units.join(', ')}`
  return { code: 'entry-not-understood', value, allowed: `a number or a simple sum such as 12+4${inUnits}` }
}

/** The unit behind a tolerance, which is the value's too where that has none: both of `9 ± 0.2 in` are inches. */
function unitBehind(text: string, kind: QuantityKind): string | null {
  const tokens = tokensOf(text)
  const last = 'code' in tokens ? undefined : tokens.at(-1)
  if (last?.type !== 'unit' || last.text.startsWith('%')) return null
  return unitOf(kind, last.text)?.symbol ?? null
}

/** A sum with its unit, by the conversion given: with the scale's zero for a value, without it for a difference. */
function amountOf(
  text: string,
  kind: QuantityKind,
  bare: string,
  convert: typeof toEngine,
): Amount | Trouble {
  const tokens = tokensOf(text)
  if ('code' in tokens) return tokens
  const terms = termsOf(tokens)
  if (terms === null) return notUnderstood(text.trim(), kind)
  const written = terms.map((term) => term.unit).filter((unit) => unit !== null)
  const wrong = written.find((unit) => unitOf(kind, unit) === null)
  if (wrong !== undefined)
    return {
      code: 'entry-wrong-unit',
      value: wrong,
      allowed: unitsOffered(kind)
        .map((symbol) => (symbol === '' ? 'a plain number' : symbol))
        .join(', '),
    }
  const unit = unitOf(kind, written[0] ?? bare)
  if (unit === null) throw new Error(`no unit "${bare}" of ${kind}`)
  const oneUnitBehind = written.length === 0 || (written.length === 1 && terms.at(-1)?.unit !== null)
  if (!oneUnitBehind && (written.length < terms.length || unit.plus !== 0))
    return notUnderstood(text.trim(), kind)
  const value = oneUnitBehind
    ? convert(
        terms.reduce((sum, term) => sum + term.value, 0),
        kind,
        unit.symbol,
      )
    : terms.reduce((sum, term) => sum + convert(term.value, kind, term.unit ?? unit.symbol), 0)
  return Number.isFinite(value) ? { value, unit: unit.symbol } : notUnderstood(text.trim(), kind)
}

function toleranceOf(text: string, kind: QuantityKind, unit: string): EntryTolerance | Trouble {
  const [, number = '', sign = '', which = ''] =
    /^(.*?)(%|percent)?\s*(of it|points?)?$/i.exec(text.trim()) ?? []
  if (sign !== '' && unit === '%' && which === '') {
    const asTyped = number.trim()
    return {
      code: 'entry-ambiguous',
      value: `± ${text.trim()}`,
      allowed: `± ${asTyped} % of it, or ± ${asTyped} % points`,
    }
  }
  if (sign !== '' && which.startsWith('point') && unit !== '%') return notUnderstood(text.trim(), kind)
  const relative = sign !== '' && !which.startsWith('point')
  const amount = relative
    ? amountOf(number, 'none', '', toEngine)
    : amountOf(which === '' ? text : number, kind, unit, differenceToEngine)
  if ('code' in amount) return amount
  if (amount.value < 0)
    return { code: 'entry-not-understood', value: `± ${text.trim()}`, allowed: 'a tolerance of 0 or more' }
  return relative ? { plusMinusPercent: amount.value } : { plusMinus: amount.value }
}
