/** A piece of what was typed. A number with two readings carries both, for the question back. */
export type Token =
  | { readonly type: 'number'; readonly value: number; readonly spaceBefore: boolean }
  | { readonly type: 'unit'; readonly text: string }
  | { readonly type: 'sign'; readonly sign: Sign }

type Sign = '+' | '-' | '*' | '/' | '(' | ')'

/** Why a text could not be cut into tokens. */
interface TokenTrouble {
  readonly code: 'entry-not-understood' | 'entry-ambiguous'
  readonly value: string
  readonly allowed: string
}

const atom = String.raw`(?:[°\p{L}]+|%)(?:\^(?:-?\d+|\([^()]*\))|[²³])?`
const unitPattern = new RegExp(
  String.raw`^(?:["'″′”’]|(?:1/(?=\p{L}))?${atom}(?:(?:\s*[·⋅*/]\s*|-|\.|\s(?=\p{L}))${atom}|\s*/\s*\(\s*${atom}(?:\s*[·⋅*/]\s*${atom})*\s*\))*)`,
  'u',
)
/** Digits with spaces between groups of three, with marks, or plain; the exponent only with its digits. */
const numberPattern =
  /^(?:\d{1,3}(?:[ \u00A0\u2009\u202F]\d{3})+(?![\d]|\s*\/)(?:[.,]\d+)?|\d[\d.,]*|[.,]\d+)(?:e[+-]?\d+)?/i
const signs: Readonly<Record<string, Sign>> = {
  '+': '+',
  '-': '-',
  '−': '-',
  '*': '*',
  '×': '*',
  '·': '*',
  '/': '/',
  '÷': '/',
  '(': '(',
  ')': ')',
}

/** A number as builders of any country write it; the trouble where it has two readings or none. */
function readNumber(written: string): number | TokenTrouble {
  const text = written.replace(/[\s\u00A0\u2009\u202F]/g, '')
  const notUnderstood: TokenTrouble = {
    code: 'entry-not-understood',
    value: text,
    allowed: 'numbers such as 1234.5 or 1234,5',
  }
  const [, mantissa = '', exponent = ''] = /^([\d.,]*)(e.*)?$/i.exec(text) ?? []
  const value = Number(plainMantissa(mantissa) + exponent)
  if (/^[1-9]\d{0,2},\d{3}$/.test(mantissa)) {
    const [whole = '', rest = ''] = mantissa.split(',')
    return {
      code: 'entry-ambiguous',
      value: mantissa,
      allowed: `${whole}.${rest} with a decimal point, or ${whole}${rest} without a comma`,
    }
  }
  return mantissa === '' || !Number.isFinite(value) ? notUnderstood : value
}

/** Digits with a point for the decimals and no thousands; not a number where marks make no sense. */
function plainMantissa(text: string): string {
  if (/^\d*\.?\d*$/.test(text)) return text
  if (/^\d*,\d*$/.test(text)) return text.replace(',', '.')
  if (/^\d{1,3}(,\d{3})+(\.\d*)?$/.test(text)) return text.replaceAll(',', '')
  if (/^\d{1,3}(\.\d{3})+,\d*$/.test(text)) return text.replaceAll('.', '').replace(',', '.')
  return 'none'
}

/** Cuts a typed sum into numbers, units and signs. */
export function tokensOf(text: string): readonly Token[] | TokenTrouble {
  const tokens: Token[] = []
  let rest = text
  let spaceBefore = false
  while (rest !== '') {
    const space = /^\s+/.exec(rest)
    if (space !== null) {
      spaceBefore = true
      rest = rest.slice(space[0].length)
      continue
    }
    const [piece] = (tokens.at(-1)?.type === 'number' ? unitPattern.exec(rest) : null) ??
      numberPattern.exec(rest) ??
      unitPattern.exec(rest) ?? [rest.slice(0, 1)]
    const sign = signs[piece]
    if (/^[\d.,]/.test(piece) && !/^1\/\p{L}/u.test(piece)) {
      const value = readNumber(piece)
      if (typeof value !== 'number') return value
      tokens.push({ type: 'number', value, spaceBefore })
    } else if (sign !== undefined) {
      tokens.push({ type: 'sign', sign })
    } else if (unitPattern.test(piece)) {
      tokens.push({ type: 'unit', text: piece.trim() })
    } else {
      return { code: 'entry-not-understood', value: piece, allowed: 'numbers, + − * / ( ), and a unit' }
    }
    spaceBefore = false
    rest = rest.slice(piece.length)
  }
  return tokens
}
