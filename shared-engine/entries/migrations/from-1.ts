import { isJsonGroup, type JsonGroup } from '../json-group.ts'
import { valueAt } from '../path.ts'
import type { MigratedBuild } from '../migrate.ts'

/** Said of a build of version 1 that left out how its loop is held. */
const tensionerNote =
  'Brought up from version 1 of the build file: the tensioner counts as fixed (a screw) now, before as sprung. Enter track.tensioner where a spring or a weight holds the loop.'

const loadNote =
  'Brought up from version 1 of the build file: service.loadPercent is dropped. Currents and heat of a run now come from its drive pattern, service.pattern.'

/**
 * Version 1 to 2. The defaults of version 1 that version 2 has others for are written down where nothing was entered, so
 * that the build means what it meant; a static tension of 0, which stood for "not known", goes, and so does the load
 * over a run, which the drive pattern replaces. What is no group of entries is left for the check to name.
 */
export function fromVersion1(older: JsonGroup): MigratedBuild {
  const withDefaults: JsonGroup = {
    ...older,
    ...written(older, 'motor', { viscousPercent: 0, maxTemperatureC: 120 }),
    ...written(older, 'track', { sharePercent: 50, knockdownPercent: 100 }),
    ...written({ service: {}, ...older }, 'service', { packTemperatureC: 20 }),
    ...writtenStages(older),
  }
  const noTension = valueAt(older, ['track', 'pretensionN']) === 0
  const load = valueAt(older, ['service', 'loadPercent']) !== undefined
  const slack = noTension ? without(withDefaults, 'track', 'pretensionN') : withDefaults
  return {
    build: load ? without(slack, 'service', 'loadPercent') : slack,
    notes: [tensionerNote, ...(load ? [loadNote] : [])],
  }
}

/** A group with values where it has none; nothing where the build has no such group. */
function written(build: JsonGroup, key: string, values: JsonGroup): JsonGroup {
  const group = build[key]
  return isJsonGroup(group) ? { [key]: { ...values, ...group } } : {}
}

/** A gearbox of a known ratio took 3 % where nothing was entered. */
function writtenStages({ stages }: JsonGroup): JsonGroup {
  if (!Array.isArray(stages)) return {}
  const efficiency = { efficiencyPercent: 97 }
  const items = stages as readonly unknown[]
  return {
    stages: items.map((stage) =>
      isJsonGroup(stage) && stage['kind'] === 'fixed' ? { ...efficiency, ...stage } : stage,
    ),
  }
}

/** A build without an entry, its tolerance and its origin. */
export function without(build: JsonGroup, group: string, key: string): JsonGroup {
  const path = `${group}.${key}`
  return {
    ...build,
    ...lacking(build, group, key),
    ...lacking(build, 'tolerances', path),
    ...lacking(build, 'origins', path),
  }
}

function lacking(build: JsonGroup, group: string, key: string): JsonGroup {
  const held = build[group]
  if (!isJsonGroup(held) || !Object.hasOwn(held, key)) return {}
  return { [group]: Object.fromEntries(Object.entries(held).filter(([name]) => name !== key)) }
}
