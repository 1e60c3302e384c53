import { describe, expect, it } from 'vitest'
import { exportsOf, filesBelow } from './sources-of.ts'

/** Folders whose functions are formulas: each is to be checked against its source by whoever reads it. */
const physics = ['assume', 'pack', 'motor', 'geometry', 'stages', 'track', 'ground', 'heat', 'vehicle']

const functions = physics
  .flatMap((folder) => filesBelow(`shared-engine/${folder}`, ['.ts']))
  .filter((file) => !/\/(draw|working|limits)\.ts$/.test(file)) // a kind's drawing and words are no physics
  .filter((file) => !/\/assume\/(assumed|assumption|start|table)\.ts$/.test(file)) // put estimates into a build: no formulas
  .flatMap(exportsOf)
  .filter(({ kind }) => kind === 'function')

/** Functions that only put together or pass on what others work out: no formula, so no source. Debts, to shrink. */
const withoutFormula = [
  'clearState',
  'clearTopState',
  'continueRun',
  'cruiseAt',
  'startRun',
  'startSoilRun',
  'stateOf',
  'thrustCurve',
]

const isSourced = (doc: string) => /\*Source:\*|\[assumption\]|\{@link/.test(doc)

const textOf = (doc: readonly string[]) => doc.join(' ')

describe('every exported function of the physics', () => {
  it.each(withoutFormula)(
    '%s is there, and still needs its place in the list of those without a formula',
    (name) => {
      const found = functions.filter((one) => one.name === name)
      expect(found).not.toEqual([])
      expect(found.some(({ doc }) => !isSourced(textOf(doc)))).toBe(true)
    },
  )

  it('is there to be looked at', () => {
    expect(functions.length).toBeGreaterThan(80)
  })

  it.each(
    functions
      .filter(({ name }) => !withoutFormula.includes(name))
      .map((one) => [`${one.file}: ${one.name}`, textOf(one.doc)]),
  )('%s says what it does and where it comes from', (_, doc) => {
    expect(doc.length).toBeGreaterThan(20)
    expect(isSourced(doc)).toBe(true)
  })
})
