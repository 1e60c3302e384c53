import { guideOf, testIds, type TestId } from '../reference/measurements.ts'
import { measuredFor } from './instead.ts'

/** Guided tests that tell an entry, or the entry that takes its place. */
export function testsTelling(path: string): readonly TestId[] {
  const told = measuredFor(path)
  return testIds.filter((test) => guideOf(test).results.some((result) => result.path === told))
}
