import { buildRows } from './parts/build.ts'
import { schemaOf } from './rows/schema.ts'
import type { Complete, Stored } from './rows/types.ts'

export { buildFormat, buildVersion } from './parts/general.ts'

type Whole = { readonly label: 'Build'; readonly entries: typeof buildRows }

/** A build as the file holds it: what the builder entered, nothing more. This is what is edited and saved. */
export type StoredBuild = Stored<Whole>

/** A build with every default in force, still in bench units: what the physics reads. */
export type Build = Complete<Whole>

let made: ReturnType<typeof schemaOf<typeof buildRows>> | null = null

/**
 * The stored build in bench units: the shape of the file, with every default filled in on the way out. Made when it is
 * first asked for: a third of what starts with a thread of long work, which reads no file.
 */
export function buildSchema(): ReturnType<typeof schemaOf<typeof buildRows>> {
  made ??= schemaOf(buildRows)
  return made
}

export type Stage = Build['stages'][number]
export type Tooth = NonNullable<Build['track']['tooth']>
export type Ground = Build['ground']
export type Cooling = NonNullable<Build['cooling']>
export type Accessory = Build['accessories'][number]
export type Tolerance = Build['tolerances'][string]
export type EntryOrigin = Build['origins'][string]
