import { entryAt, withEntry } from '../../shared-engine/entries/edit.ts'
import { joint as jointRows } from '../../shared-engine/entries/parts/joint.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'

/** What a joint of each kind starts with where the one before has no such entry: guesses of a small machine. */
const starts: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  key: { lengthMm: 10 },
  screw: { screwMm: 3 },
  pin: { pinMm: 2 },
  clamp: { clampForceN: 2000 },
  flat: { lengthMm: 10, flatDepthMm: 0.5 },
}

/** Another kind for a joint: entries that both kinds have stay, new ones are guesses and marked as such. */
export function withJointKind(stored: StoredBuild, joint: string, kind: string): StoredBuild {
  const rows: Readonly<Record<string, Readonly<Record<string, unknown>>>> = jointRows.variants
  const own = Object.keys(rows[kind] ?? {})
  const ofAll = new Set(Object.values(rows).flatMap((variant) => Object.keys(variant)))
  const before = entryAt(stored, joint)
  if (typeof before !== 'object' || before === null) return stored
  const gone = Object.keys(before).filter((key) => ofAll.has(key) && !own.includes(key))
  const bare = gone.reduce((build, key) => withEntry(build, `${joint}.${key}`, undefined), stored)
  const named = withEntry(bare, `${joint}.kind`, kind)
  return Object.entries(starts[kind] ?? {}).reduce((build, [key, value]) => {
    const path = `${joint}.${key}`
    if (entryAt(build, path) !== undefined) return build
    return withEntry(withEntry(build, path, value), `origins.${path}`, 'assumed')
  }, named)
}
