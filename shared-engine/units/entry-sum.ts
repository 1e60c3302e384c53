import type { Token } from './entry-tokens.ts'

/** A part of a sum with the unit that stands behind it, if any. */
interface Term {
  readonly value: number
  readonly unit: string | null
}

/** What a sum comes to: its terms, added by the caller once it knows their units; `null` where it is no sum. */
export function termsOf(tokens: readonly Token[]): readonly Term[] | null {
  const parts: { sign: 1 | -1; tokens: Token[] }[] = [{ sign: 1, tokens: [] }]
  let depth = 0
  for (const token of tokens) {
    const sign = token.type === 'sign' ? token.sign : ''
    if (sign === '(') depth++
    if (sign === ')') depth--
    const current = parts[parts.length - 1]
    if (current === undefined || depth < 0) return null
    const joins = depth === 0 && (sign === '+' || sign === '-') && endsValue(current.tokens.at(-1))
    if (joins) parts.push({ sign: sign === '+' ? 1 : -1, tokens: [] })
    else current.tokens.push(token)
  }
  const terms: Term[] = []
  for (const part of parts) {
    const last = part.tokens.at(-1)
    const unit = last?.type === 'unit' ? last.text : null
    const value = plainValue(unit === null ? part.tokens : part.tokens.slice(0, -1))
    if (value === null) return null
    terms.push({ value: part.sign * value, unit })
  }
  return terms
}

function endsValue(token: Token | undefined): boolean {
  return token !== undefined && (token.type !== 'sign' || token.sign === ')')
}

/** Value of a sum without units by recursive descent; `null` where it is none or has no finite value. */
function plainValue(tokens: readonly Token[]): number | null {
  let next = 0
  const peek = () => tokens[next]
  const takeSign = (...wanted: string[]): string | null => {
    const token = peek()
    if (token?.type !== 'sign' || !wanted.includes(token.sign)) return null
    next++
    return token.sign
  }
  const single = (): number => {
    const sign = takeSign('+', '-')
    if (sign !== null) return sign === '-' ? -single() : single()
    if (takeSign('(') !== null) {
      const inner = sum()
      return takeSign(')') === null ? NaN : inner
    }
    const token = peek()
    if (token?.type !== 'number') return NaN
    next++
    return token.value + mixedFraction()
  }
  /** The 3/8 of `1 3/8`: a fraction of whole numbers behind a whole number and a space. */
  const mixedFraction = (): number => {
    const [whole, above, stroke, below] = tokens.slice(next - 1, next + 3)
    const fraction =
      above?.type === 'number' && above.spaceBefore && stroke?.type === 'sign' && stroke.sign === '/'
    if (whole?.type !== 'number' || !fraction || below?.type !== 'number') return 0
    if (![whole.value, above.value, below.value].every(Number.isInteger)) return NaN
    next += 3
    return above.value / below.value
  }
  const product = (): number => {
    let value = single()
    for (let sign = takeSign('*', '/'); sign !== null; sign = takeSign('*', '/')) {
      value = sign === '*' ? value * single() : value / single()
    }
    return value
  }
  const sum = (): number => {
    let value = product()
    for (let sign = takeSign('+', '-'); sign !== null; sign = takeSign('+', '-')) {
      value = sign === '+' ? value + product() : value - product()
    }
    return value
  }
  const value = sum()
  return next === tokens.length && Number.isFinite(value) ? value + 0 : null
}
