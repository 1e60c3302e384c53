import type { VersionSteps } from '../migrate.ts'
import { fromVersion1 } from './from-1.ts'

/**
 * The steps from each older version of the build to the next, one pure file each (`from-1.ts` exports `fromVersion1`).
 * Whoever raises `buildVersion` adds the step here and keeps a file of the old version in the tests.
 */
export const versionSteps: VersionSteps = new Map([[1, fromVersion1]])
