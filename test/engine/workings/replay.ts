import { all, create, type MathNode } from 'mathjs'

const math = create(all ?? {})

/** A value and how far rounding may have moved it. */
interface Bounded {
  readonly value: number
  readonly error: number
}

/** Of every term: where two near equals are subtracted, the contract holds them to 1e-12 of the larger one. */
const ofTerm = 1e-12

type Scope = Readonly<Record<string, number>>
type Named = MathNode & {
  readonly name: string
  readonly args: MathNode[]
  readonly fn: { name: string } | string
}

/**
 * Value of an expression, and how far an error of 1e-12 in each of its terms can move it.
 *
 * The error of every part is carried through the functions by moving their arguments.
 */
function bounded(node: MathNode, scope: Scope): Bounded {
  if (node.type === 'ParenthesisNode')
    return bounded((node as unknown as { content: MathNode }).content, scope)
  if (node.type !== 'OperatorNode' && node.type !== 'FunctionNode') return leaf(node, scope)
  const { args } = node as Named
  const parts = args.map((arg) => bounded(arg, scope))
  const names = args.map((_, at) => `part${at}`)
  const same =
    node.type === 'OperatorNode'
      ? new math.OperatorNode(
          ...operatorOf(node),
          names.map((name) => new math.SymbolNode(name)),
        )
      : new math.FunctionNode(
          functionOf(node),
          names.map((name) => new math.SymbolNode(name)),
        )
  const compiled = same.compile()
  const at = (values: readonly number[]) =>
    Number(compiled.evaluate(Object.fromEntries(values.map((value, place) => [names[place], value]))))
  const values = parts.map((part) => part.value)
  const value = at(values)
  let error = ofTerm * Math.abs(value)
  parts.forEach((part, place) => {
    const moved = [part.error, -part.error].map((by) => at(values.with(place, part.value + by)) - value)
    error += Math.max(0, ...moved.filter(Number.isFinite).map(Math.abs))
  })
  return { value, error }
}

function leaf(node: MathNode, scope: Scope): Bounded {
  const value = Number(node.compile().evaluate({ ...scope }))
  return { value, error: ofTerm * Math.abs(value) }
}

function operatorOf(node: MathNode): ['+', 'add'] {
  const { op, fn } = node as unknown as { op: '+'; fn: 'add' }
  return [op, fn]
}

const functionOf = (node: MathNode): string => {
  const { fn } = node as Named
  return typeof fn === 'string' ? fn : fn.name
}

/** An expression worked out with its symbols put in, by a library that knows nothing of this program. */
export function replay(expression: string, scope: Scope): Bounded {
  return bounded(math.parse(expression), scope)
}

/** Symbols that an expression asks for; functions and π are the library's. */
export function symbolsOf(expression: string): ReadonlySet<string> {
  const names = new Set<string>()
  math.parse(expression).traverse((node, path) => {
    if (node.type === 'SymbolNode' && path !== 'fn' && (node as Named).name !== 'pi')
      names.add((node as Named).name)
  })
  return names
}
