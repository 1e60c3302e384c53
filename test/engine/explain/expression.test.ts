import fc from 'fast-check'
import { all, create, type MathNode } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { evaluateExpression, symbolsIn } from '../../../shared-engine/workings/expression/evaluate.ts'
import { parseExpression } from '../../../shared-engine/workings/expression/parse.ts'
import { functions, type Expression } from '../../../shared-engine/workings/expression/tree.ts'
import { expressionTex } from '../../../src-renderer/limits/expression-tex.ts'
import { expressionText } from '../../fixtures/expression.ts'

// The reader of expressions and its typesetter against mathjs, which knows nothing of them.

const math = create(all ?? {})

type Node = MathNode & {
  readonly name: string
  readonly value: number
  readonly op: string
  readonly fn: { readonly name: string }
  readonly args: readonly Node[]
  readonly content: Node
}

/** The tree of mathjs in our shape. */
function treeOf(node: Node): unknown {
  const parts = node.args?.map(treeOf)
  switch (node.type) {
    case 'ParenthesisNode':
      return treeOf(node.content)
    case 'ConstantNode':
      return { kind: 'number', value: node.value }
    case 'SymbolNode':
      return { kind: 'symbol', name: node.name }
    case 'FunctionNode':
      return { kind: 'call', name: node.fn.name, parts }
    default:
      return parts.length === 1
        ? { kind: 'negative', of: parts[0] }
        : { kind: 'operation', operator: node.op, left: parts[0], right: parts[1] }
  }
}

test('any expression is read as mathjs reads it', () => {
  fc.assert(
    fc.property(expressionText, (text) => {
      expect(parseExpression(text)).toEqual(treeOf(math.parse(text) as Node))
    }),
    { numRuns: 500 },
  )
})

test('any expression is typeset as mathjs sets it', () => {
  fc.assert(
    fc.property(expressionText, (text) => {
      const handler = (node: MathNode) => (node.type === 'SymbolNode' ? ` ${(node as Node).name}` : undefined)
      const theirs = math.parse(text).toTex({ parenthesis: 'auto', handler })
      expect(expressionTex(parseExpression(text), (name) => ` ${name}`)).toBe(theirs)
    }),
    { numRuns: 500 },
  )
})

const worked = (text: string): number => evaluateExpression(parseExpression(text), () => NaN)

describe('each operation and function gives what mathjs gives', () => {
  const operations = ['0.3 + 2', '0.3 - 2', '0.3 * 7', '0.3 / 7', '2.5^0.8', '-3', '-3^2', '2 * pi']
  const calls = Object.keys(functions).map((name) =>
    /^m(in|ax)$/.test(name) ? `${name}(2, 0.7)` : `${name}(0.7)`,
  )
  test.each([...operations, ...calls, 'floor(-0.7)'])('%s', (text) => {
    expect(worked(text)).toBeCloseTo(Number(math.evaluate(text)), 14)
  })
})

test('symbols are those that a number is put in for', () => {
  expect(symbolsIn(parseExpression('2 * pi * max(r_1, omega_ref) / r_1'))).toEqual(['r_1', 'omega_ref'])
})

describe('what cannot be read says where and what is allowed', () => {
  test.each([
    ['', /it ends at piece 1, allowed is a number, a name/],
    ['2 *', /it ends at piece 3/],
    ['(a + b', /it ends at piece 5, allowed is “\)”/],
    ['a b', /“b” stands at piece 2, allowed is an operator or the end/],
    ['a + )', /“\)” stands at piece 3/],
    ['ln(a)', /“ln” stands at piece 1, allowed is a function \(sqrt, /],
    ['a % b', /cannot be read at 2: allowed are numbers/],
    ['min(a, b', /it ends at piece 6/],
  ])('%s', (text, words) => {
    expect(() => parseExpression(text)).toThrow(words)
  })
})

test('a symbol without a number is the asker’s to refuse', () => {
  const tree: Expression = parseExpression('2 * x')
  const refuse = (name: string): number => {
    throw new Error(`no ${name}`)
  }
  expect(() => evaluateExpression(tree, refuse)).toThrow('no x')
})
