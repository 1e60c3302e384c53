import { fieldOf } from '../entries/fields.ts'
import { mayBeZero } from '../reference/measurements.ts'
import type { Combined } from './combine.ts'
import type { Remark, Verdict } from './kind.ts'

/** A result with what is to be said of it. */
interface Judged {
  /** As it is offered: held at the edge of its range where it may be. */
  readonly value: number
  readonly remarks: readonly Remark[]
}

/** A result as it comes out of the formula. */
interface Result {
  readonly name: string
  readonly path: string
  readonly value: number
}

/** A drag or a slip that is not there comes out as a little less than nothing; a knock-down, as a little over the whole. */
function edgeFor({ name, value }: Result, low: number, high: number, plusMinus: number): number | null {
  if (name === 'knockdown' && value > high) return high
  if (mayBeZero(name) && value < low && value + plusMinus >= low) return low
  return null
}

/** Whether a result is in the range of its entry, and known closely enough to be of use. */
export function judged(result: Result, { plusMinus, degreesOfFreedom }: Combined): Judged {
  const { name, path } = result
  const { low = -Infinity, high = Infinity } = fieldOf(path) ?? {}
  const remarks: Remark[] = []
  let value = result.value
  if (value < low || value > high) {
    const edge = edgeFor(result, low, high, plusMinus)
    remarks.push(
      edge === null ? { code: 'range', about: name, verdict: 'retake' } : { code: 'held', about: name },
    )
    value = edge ?? value
  }
  const size = Math.abs(value)
  if (plusMinus > size / 2)
    remarks.push({ code: 'uncertain', about: name, verdict: mayBeZero(name) ? 'weak' : 'retake' })
  else if (plusMinus > size / 5) remarks.push({ code: 'rough', about: name, verdict: 'weak' })
  if (degreesOfFreedom !== null && degreesOfFreedom < 3) remarks.push({ code: 'few-repeats', about: name })
  return { value, remarks }
}

const order: readonly Verdict[] = ['good', 'weak', 'retake']

/** The worst of what remarks make of a result. */
export function worstOf(verdicts: readonly (Verdict | undefined)[]): Verdict {
  const most = Math.max(0, ...verdicts.map((verdict) => order.indexOf(verdict ?? 'good')))
  return order[most] ?? 'good'
}
