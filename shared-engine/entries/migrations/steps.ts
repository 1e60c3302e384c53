import type { VersionSteps } from '../migrate.ts'

/**
 * The steps from each older version of the build to the next, one pure file each (`from-1.ts` exports `fromVersion1`).
 * Version 1 is the first, so there is none yet. Whoever raises `buildVersion` adds the step here and keeps a file of
 * the old version in the tests.
 */
export const versionSteps: VersionSteps = new Map()
