import { functions, type Expression, type FunctionName, type Operator } from './tree.ts'

const token = /\s*(?:(\d+(?:\.\d+)?(?:e[+-]?\d+)?)|([A-Za-z][A-Za-z0-9_]*)|([-+*/^(),]))/y

/** How tightly an operator of two operands binds. */
const bindings: Readonly<Record<string, number>> = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 4 }
/** A minus before an operand binds tighter than a product, looser than a power: −x² is −(x²). */
const minusBinding = 3

const isFunction = (name: string): name is FunctionName => Object.hasOwn(functions, name)

/**
 * Reads an expression of a working: numbers, symbols (`omega_ref`), + − * / ^, brackets and the functions of the tree.
 *
 * A power binds from the right, everything else from the left, as is usual in algebra.
 *
 * @throws where it cannot be read: a bug of ours; says what stands where, and what is allowed
 * @example parseExpression('2 * x').kind // 'operation'
 */
export function parseExpression(text: string): Expression {
  return new Reader(text).whole()
}

class Reader {
  readonly #text: string
  readonly #tokens: readonly string[]
  #next = 0

  constructor(text: string) {
    this.#text = text
    this.#tokens = this.#cut()
  }

  whole(): Expression {
    const read = this.#above(0)
    if (this.#peek() !== undefined) this.#fail('an operator or the end')
    return read
  }

  #cut(): readonly string[] {
    const found: string[] = []
    const end = this.#text.trimEnd().length
    token.lastIndex = 0
    while (token.lastIndex < end) {
      const at = token.lastIndex
      const match = token.exec(this.#text)
      if (match === null)
        throw new Error(
          `“${this.#text}” cannot be read at ${at + 1}: allowed are numbers, names, + - * / ^ ( ) ,`,
        )
      found.push(match[0].trimStart())
    }
    return found
  }

  #peek(): string | undefined {
    return this.#tokens[this.#next]
  }

  /** Operands joined by operators that bind more tightly than `least`. */
  #above(least: number): Expression {
    let left = this.#operand()
    for (;;) {
      const operator = this.#peek() ?? ''
      const binding = bindings[operator] ?? 0
      if (binding <= least) return left
      this.#next += 1
      const right = this.#above(operator === '^' ? binding - 1 : binding)
      left = { kind: 'operation', operator: operator as Operator, left, right }
    }
  }

  #operand(): Expression {
    const first = this.#peek() ?? ''
    this.#next += 1
    if (first === '-') return { kind: 'negative', of: this.#above(minusBinding) }
    if (first === '(') return this.#closed(this.#above(0))
    if (/^\d/.test(first)) return { kind: 'number', value: Number(first) }
    if (!/^[A-Za-z]/.test(first)) this.#fail('a number, a name, “-” or “(”', -1)
    if (this.#peek() !== '(') return { kind: 'symbol', name: first }
    if (!isFunction(first)) this.#fail(`a function (${Object.keys(functions).join(', ')})`, -1)
    return { kind: 'call', name: first, parts: this.#arguments() }
  }

  #arguments(): readonly Expression[] {
    const parts: Expression[] = []
    do {
      this.#next += 1
      parts.push(this.#above(0))
    } while (this.#peek() === ',')
    return this.#closed(parts)
  }

  #closed<Read>(read: Read): Read {
    if (this.#peek() !== ')') this.#fail('“)”')
    this.#next += 1
    return read
  }

  #fail(allowed: string, by = 0): never {
    const place = this.#next + by
    const met = this.#tokens[place]
    const what = met === undefined ? 'it ends' : `“${met}” stands`
    throw new Error(`“${this.#text}” cannot be read: ${what} at piece ${place + 1}, allowed is ${allowed}`)
  }
}
