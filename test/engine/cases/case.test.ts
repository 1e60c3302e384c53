import { expect, it } from 'vitest'
import { caseNames, caseNumber } from '../../../shared-engine/cases/case.ts'

it('a case’s number is its place among the names', () => {
  expect(Object.keys(caseNumber)).toEqual([...caseNames])
  expect(Object.values(caseNumber)).toEqual(caseNames.map((_, place) => place))
})
