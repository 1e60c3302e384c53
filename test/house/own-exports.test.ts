import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { ownExports } from './own-exports.ts'

interface Debt {
  readonly why: string
  readonly exports: readonly string[]
}

/** What is exported though only its own file uses it, by reason. The lists may only shrink. */
const debts = JSON.parse(
  readFileSync(new URL('own-exports.json', import.meta.url), 'utf8'),
) as readonly Debt[]
const owed = debts.flatMap(({ exports }) => exports)
const found = ownExports()

test('nothing new is exported that only its own file uses', () => {
  expect(found.filter((one) => !owed.includes(one))).toEqual([])
})

test('what is used elsewhere by now, or no longer exported, is struck off the list', () => {
  expect(owed.filter((one) => !found.includes(one))).toEqual([])
})

test('every debt has its reason and stands once', () => {
  expect(debts.filter(({ why }) => why.length < 20)).toEqual([])
  expect(owed).toHaveLength(new Set(owed).size)
})
