import { parseExpression } from '../../shared-engine/workings/expression/parse.ts'
import { expressionTex } from './expression-tex.ts'

/** Letters with a sign of their own in mathematics. */
const letters = new Set(
  'alpha beta gamma delta epsilon zeta eta theta kappa lambda mu nu xi pi rho sigma tau phi chi psi omega Delta Omega Phi Theta Sigma'.split(
    ' ',
  ),
)
const relations: Readonly<Record<string, string>> = { phi: '\\varphi', epsilon: '\\varepsilon' }

/**
 * A symbol as it stands in an expression (`omega_ref`) as TeX: Greek letters by name, all after the first underscore
 * as an upright index.
 *
 * @example symbolTex('omega_ref') // '\\omega_{\\mathrm{ref}}'
 */
export function symbolTex(symbol: string): string {
  const [base = '', ...rest] = symbol.split('_')
  const head = letters.has(base)
    ? (relations[base] ?? `\\${base}`)
    : base.length > 1
      ? `\\mathrm{${base}}`
      : base
  if (rest.length === 0) return head
  return `${head}_{${rest.map((part) => (letters.has(part) ? `\\${part}` : `\\mathrm{${part}}`)).join(',')}}`
}

/** A number as TeX, four significant figures: what is put into a formula. */
export function numberTex(value: number | null): string {
  if (value === null || !Number.isFinite(value)) return '\\text{?}'
  const size = Math.abs(value)
  if (size !== 0 && (size < 1e-3 || size >= 1e6)) {
    const [digits = '0', power = '0'] = value.toExponential(3).split('e')
    return `${Number(digits)}\\cdot10^{${Number(power)}}`
  }
  return String(Number(value.toPrecision(4)))
}

/**
 * An expression in plain algebra as TeX, twice: in its symbols, and with the numbers put in.
 *
 * @param valueOf value of a symbol in SI; undefined for a name that is none (a function)
 */
export function typeset(
  expression: string,
  valueOf: (symbol: string) => number | null | undefined,
): { readonly symbols: string; readonly numbers: string } {
  const tree = parseExpression(expression)
  return {
    symbols: spaced(expressionTex(tree, (name) => ` ${symbolTex(name)}`)),
    numbers: spaced(expressionTex(tree, (name) => putIn(valueOf(name), name))),
  }
}

/** Negative numbers and powers of ten stand in brackets where they are put in. */
function putIn(value: number | null | undefined, name: string): string {
  if (value === undefined) return ` ${symbolTex(name)}`
  const text = numberTex(value)
  return /^-|cdot/.test(text) ? `\\left(${text}\\right)` : ` ${text}`
}

function spaced(tex: string): string {
  return tex.replaceAll('\\cdot', '\\,\\cdot\\,')
}
