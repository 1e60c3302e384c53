import { guideOf, testIds, type TestId } from '../reference/measurements.ts'

/** Entries that stand aside once another one is known: what has to be measured in their place. */
const insteadOf: Readonly<Record<string, string>> = {
  // How the teeth share is then worked out from the stiffness of loop and teeth.
  'track.sharePercent': 'track.loopStiffnessN',
}

/** Guided tests that tell an entry, or the entry that takes its place. */
export function testsTelling(path: string): readonly TestId[] {
  const told = insteadOf[path] ?? path
  return testIds.filter((test) => guideOf(test).results.some((result) => result.path === told))
}
