import type { MistakeCode } from '../mistakes/catalogue.ts'
import type { Mistake } from '../mistakes/mistake.ts'

/** Why a log cannot be read. */
const refusalCodes = [
  'empty',
  'binary',
  'too-big',
  'one-column',
  'no-rows',
  'no-time',
  'no-values',
  'columns',
  'alarms',
] as const
type RefusalCode = (typeof refusalCodes)[number]

/** A refusal as a mistake of the catalogue, where its sentence stands. */
export function refusal(code: RefusalCode, details: Partial<Omit<Mistake, 'code'>> = {}): Mistake {
  const key: MistakeCode = `log-${code}`
  return { code: key, path: '', value: '', allowed: '', kept: '', ...details }
}

/** The short code of a refusal, for programs; null for a mistake of another kind. */
export function refusalCodeOf(mistake: Mistake): RefusalCode | null {
  return refusalCodes.find((code) => mistake.code === `log-${code}`) ?? null
}
