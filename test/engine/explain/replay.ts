import { all, create, type EvalFunction, type MathNode } from 'mathjs'

// Its comparisons take near equals for equal: as near as doubles go, so that a tiny number is not taken for 0.
const math = create(all ?? {}, { relTol: 1e-15, absTol: 0 })

/** A value and how far rounding may have moved it. */
interface Bounded {
  readonly value: number
  readonly error: number
}

/** Of every term: where two near equals are subtracted, the contract holds them to 1e-12 of the larger one. */
const ofTerm = 1e-12

type Scope = Readonly<Record<string, number>>
/** What nodes of operators, functions, brackets and symbols have. */
type Node = MathNode & {
  readonly name: string
  readonly op?: string
  readonly fn: { readonly name: string } | string
  readonly args: readonly Node[]
  readonly content: Node
}

/** Parsed expressions and compiled pieces: the same few hundred come again on every build. */
function kept<Value>(make: (key: string) => Value): (key: string) => Value {
  const values = new Map<string, Value>()
  return (key) => {
    const known = values.get(key)
    if (known !== undefined) return known
    const value = make(key)
    values.set(key, value)
    return value
  }
}

const parsed = kept((expression) => math.parse(expression) as Node)
const compiled = kept((expression): EvalFunction => math.compile(expression))

/** An operator or function over `part0`, `part1`, … as a key and an expression at once. */
function pieceOf(node: Node): string {
  const names = node.args.map((_, at) => `part${at}`)
  if (node.op === undefined)
    return `${typeof node.fn === 'string' ? node.fn : node.fn.name}(${names.join(', ')})`
  return names.length === 1 ? `${node.op}${names.join('')}` : names.join(` ${node.op} `)
}

/**
 * Value of an expression, and how far an error of 1e-12 in each of its terms can move it: the error of every part is
 * carried through operators and functions by moving their arguments.
 */
function bounded(node: Node, scope: Scope): Bounded {
  if (node.type === 'ParenthesisNode') return bounded(node.content, scope)
  if (node.type !== 'OperatorNode' && node.type !== 'FunctionNode') {
    const value = Number(compiled(node.toString()).evaluate({ ...scope }))
    return { value, error: ofTerm * Math.abs(value) }
  }
  const parts = node.args.map((arg) => bounded(arg, scope))
  const piece = compiled(pieceOf(node))
  const at = (values: readonly number[]) =>
    Number(piece.evaluate(Object.fromEntries(values.map((value, place) => [`part${place}`, value]))))
  const values = parts.map((part) => part.value)
  const value = at(values)
  let error = ofTerm * Math.abs(value)
  parts.forEach((part, place) => {
    const moved = [part.error, -part.error].map((by) => at(values.with(place, part.value + by)) - value)
    error += Math.max(0, ...moved.filter(Number.isFinite).map(Math.abs))
  })
  return { value, error }
}

/** An expression worked out with its symbols put in, by a library that knows nothing of this program. */
export function replay(expression: string, scope: Scope): number {
  return Number(compiled(expression).evaluate({ ...scope }))
}

/** How far rounding of its terms may move an expression's value. */
export function roundingOf(expression: string, scope: Scope): number {
  return bounded(parsed(expression), scope).error
}

/** Symbols that an expression asks for; functions and π are the library's. */
export const symbolsOf = kept((expression): ReadonlySet<string> => {
  const names = new Set<string>()
  parsed(expression).traverse((node, path) => {
    const { name } = node as Node
    if (node.type === 'SymbolNode' && path !== 'fn' && name !== 'pi') names.add(name)
  })
  return names
})
