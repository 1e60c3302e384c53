import type { Expression, FunctionName } from '../../shared-engine/workings/expression/tree.ts'

/** How tightly each operator binds. */
const bindings = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 4 } as const
const minusBinding = 3

/** Pieces of TeX before and after what a function is of. */
const frames: Readonly<Record<FunctionName, readonly [string, string]>> = {
  sqrt: ['\\sqrt{', '}'],
  floor: ['\\left\\lfloor', '\\right\\rfloor'],
  log1p: ['\\ln\\left(', '+1\\right)'],
  exp: ['\\exp\\left(', '\\right)'],
  sin: ['\\sin\\left(', '\\right)'],
  cos: ['\\cos\\left(', '\\right)'],
  tan: ['\\tan\\left(', '\\right)'],
  asin: ['\\sin^{-1}\\left(', '\\right)'],
  atan: ['\\tan^{-1}\\left(', '\\right)'],
  asinh: ['\\sinh^{-1}\\left(', '\\right)'],
  min: ['\\min\\left(', '\\right)'],
  max: ['\\max\\left(', '\\right)'],
}

/**
 * An expression as TeX, with no more brackets than it needs: a fraction and an exponent bracket themselves.
 *
 * @param symbolTex TeX of a symbol
 */
export function expressionTex(tree: Expression, symbolTex: (symbol: string) => string): string {
  const texOf = (part: Expression) => expressionTex(part, symbolTex)
  switch (tree.kind) {
    case 'number':
      return constantTex(tree.value)
    case 'symbol':
      return symbolTex(tree.name)
    case 'negative':
      return `-${bracketed(texOf(tree.of), bindingOf(tree.of) <= minusBinding && !isFraction(tree.of))}`
    case 'call': {
      const [before, after] = frames[tree.name]
      return before + tree.parts.map(texOf).join(',') + after
    }
    case 'operation':
      return operationTex(tree, texOf)
  }
}

type Operation = Extract<Expression, { kind: 'operation' }>

function operationTex({ operator, left, right }: Operation, texOf: (part: Expression) => string): string {
  if (operator === '/') return `\\frac{${texOf(left)}}{${texOf(right)}}`
  const binding = bindings[operator]
  if (operator === '^') {
    const base = `{${bracketed(texOf(left), bindingOf(left) <= binding && !isFraction(left))}}`
    return `${bracketed(base, isFraction(left))}^{${texOf(right)}}`
  }
  const first = bracketed(texOf(left), bindingOf(left) < binding && !isFraction(left))
  const loose = bindingOf(right) < binding || (operator === '-' && bindingOf(right) === binding)
  const second = bracketed(texOf(right), loose && !isFraction(right))
  return `${first}${operator === '*' ? '\\cdot' : operator}${second}`
}

const bracketed = (tex: string, needed: boolean) => (needed ? `\\left(${tex}\\right)` : tex)

const isFraction = (tree: Expression) => tree.kind === 'operation' && tree.operator === '/'

/** What stands alone binds tighter than any operator. */
function bindingOf(tree: Expression): number {
  if (tree.kind === 'operation') return bindings[tree.operator]
  return tree.kind === 'negative' ? minusBinding : Infinity
}

/** A number of the formula itself; all its digits. */
function constantTex(value: number): string {
  const [digits = '', power] = String(value).split('e')
  return power === undefined ? digits : `${digits}\\cdot10^{${power}}`
}
