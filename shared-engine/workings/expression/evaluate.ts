import { functions, partsOf, type Expression, type Operator } from './tree.ts'

const operations: Readonly<Record<Operator, (left: number, right: number) => number>> = {
  '+': (left, right) => left + right,
  '-': (left, right) => left - right,
  '*': (left, right) => left * right,
  '/': (left, right) => left / right,
  '^': (left, right) => left ** right,
}

/**
 * Value of an expression with numbers put in for its symbols; `pi` is known.
 *
 * @param valueOf value of a symbol, in the unit that the expression counts with
 * @returns NaN or ±Infinity where arithmetic gives that (0/0, 1/0, √−1)
 * @throws whatever `valueOf` throws for a symbol that it does not know
 * @example evaluateExpression(parseExpression('2 * x^2'), () => 3) // 18
 */
export function evaluateExpression(tree: Expression, valueOf: (symbol: string) => number): number {
  const of = (part: Expression) => evaluateExpression(part, valueOf)
  switch (tree.kind) {
    case 'number':
      return tree.value
    case 'symbol':
      return tree.name === 'pi' ? Math.PI : valueOf(tree.name)
    case 'negative':
      return -of(tree.of)
    case 'operation':
      return operations[tree.operator](of(tree.left), of(tree.right))
    case 'call': {
      const work: (...parts: number[]) => number = functions[tree.name]
      return work(...tree.parts.map(of))
    }
  }
}

/** Symbols that an expression asks for, `pi` left out. */
export function symbolsIn(tree: Expression): readonly string[] {
  if (tree.kind === 'symbol') return tree.name === 'pi' ? [] : [tree.name]
  return [...new Set(partsOf(tree).flatMap(symbolsIn))]
}
