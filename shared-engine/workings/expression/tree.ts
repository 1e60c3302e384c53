/** Functions that expressions may call, by the name they are written with: what each makes of its arguments. */
export const functions = {
  sqrt: Math.sqrt,
  exp: Math.exp,
  log1p: Math.log1p,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  atan: Math.atan,
  asinh: Math.asinh,
  floor: Math.floor,
  min: Math.min,
  max: Math.max,
} as const satisfies Readonly<Record<string, (...parts: number[]) => number>>

export type FunctionName = keyof typeof functions
export type Operator = '+' | '-' | '*' | '/' | '^'

/** An expression as a tree; brackets are in its shape alone. */
export type Expression =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'symbol'; readonly name: string }
  | { readonly kind: 'negative'; readonly of: Expression }
  | {
      readonly kind: 'operation'
      readonly operator: Operator
      readonly left: Expression
      readonly right: Expression
    }
  | { readonly kind: 'call'; readonly name: FunctionName; readonly parts: readonly Expression[] }

/** What an expression is made of at once: its operands or arguments. */
export function partsOf(expression: Expression): readonly Expression[] {
  if (expression.kind === 'negative') return [expression.of]
  if (expression.kind === 'operation') return [expression.left, expression.right]
  return expression.kind === 'call' ? expression.parts : []
}
