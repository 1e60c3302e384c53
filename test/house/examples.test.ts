import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { describe, expect, it } from 'vitest'
import { exampleScope } from './example-scope.ts'
import { exportsOf, filesBelow } from './sources-of.ts'

/** `expression // value`, in a docstring. */
interface Example {
  readonly file: string
  readonly name: string
  readonly expression: string
  readonly value: string
}

const examples = filesBelow('shared-engine', ['.ts'])
  .flatMap(exportsOf)
  .flatMap(({ file, name, doc }) =>
    doc.flatMap((line): Example[] => {
      const [, expression, value] = /^@example (.+?) \/\/ (.+)$/.exec(line) ?? []
      return expression === undefined || value === undefined ? [] : [{ file, name, expression, value }]
    }),
  )

/** Evaluates text of our own docstrings with a module's exports by name. */
function valueOf(text: string, scope: Readonly<Record<string, unknown>>): unknown {
  const names = Object.keys(scope).filter((name) => name !== 'default')
  return new Function(...names, `'use strict'; return (${text})`)(...names.map((name) => scope[name]))
}

/** Half a unit of a number's last written digit: 0.0149 is good to 0.00005, 50.9e6 to 50,000. */
function writtenError(text: string): number {
  const [, digits = '', power = '0'] = /([\d.]+)(?:e([+-]?\d+))?/.exec(text) ?? []
  const decimals = digits.includes('.') ? (digits.split('.')[1] ?? '').length : 0
  return digits.includes('.') || power !== '0' ? 0.5 * 10 ** (Number(power) - decimals) : 0
}

function expectAlike(actual: unknown, wanted: unknown, text: string): void {
  if (typeof wanted !== 'number' || Number.isNaN(wanted)) {
    expect(actual).toEqual(wanted)
    return
  }
  const allowed = Math.max(writtenError(text), 1e-12 * Math.abs(wanted)) // rounding, where all digits are written
  expect(typeof actual).toBe('number')
  expect(Math.abs((actual as number) - wanted)).toBeLessThanOrEqual(allowed * (1 + 1e-9))
}

describe('every example of a docstring gives the value beside it', () => {
  it('finds them', () => {
    expect(examples.length).toBeGreaterThan(55)
  })

  it.each(examples.map((one) => [`${one.file}: ${one.expression}`, one] as const))('%s', async (_, one) => {
    const module = (await import(/* @vite-ignore */ pathToFileURL(path.resolve(one.file)).href)) as object
    const scope = { ...exampleScope, ...module }
    expectAlike(valueOf(one.expression, scope), valueOf(one.value, scope), one.value)
  })
})
