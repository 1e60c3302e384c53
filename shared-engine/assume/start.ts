import { isAssumed, withAssumed, withAssumptions } from './assumed.ts'
import { withEntry } from '../entries/edit.ts'
import { buildFormat, buildVersion, type StoredBuild } from '../entries/schema.ts'
import { assumptions } from './table.ts'

/** A kind of machine to start from: what it is in plain words, and the numbers that stand in until they are entered. */
interface StartKind {
  readonly id: string
  readonly label: string
  readonly loops: number
  readonly motors: number
  readonly values: Readonly<Record<string, number | string>>
}

/** Entries of the machines that a builder would recognise; round numbers. *Source:* common practice, no source. */
export const startKinds: readonly StartKind[] = [
  {
    id: 'snow',
    label: 'Light snow machine: one track, one motor',
    loops: 1,
    motors: 1,
    values: {
      'vehicle.massKg': 6,
      'pack.chemistry': 'lipo',
      'pack.series': 4,
      'pack.capacityMah': 5000,
      'motor.kvRpmPerVolt': 1000,
      'track.pitchMm': 20,
      'track.sprocketTeeth': 10,
      'stages.0.ratio': 10,
    },
  },
  {
    id: 'robot',
    label: 'Tracked robot: two tracks, a motor each',
    loops: 2,
    motors: 2,
    values: {
      'vehicle.massKg': 15,
      'pack.chemistry': 'liion',
      'pack.series': 6,
      'pack.capacityMah': 12_000,
      'motor.kvRpmPerVolt': 250,
      'track.pitchMm': 20,
      'track.sprocketTeeth': 12,
      'stages.0.ratio': 10,
    },
  },
  {
    id: 'hauler',
    label: 'Hauler: two tracks, a motor each, heavy',
    loops: 2,
    motors: 2,
    values: {
      'vehicle.massKg': 100,
      'pack.chemistry': 'lifepo4',
      'pack.series': 16,
      'pack.capacityMah': 60_000,
      'motor.kvRpmPerVolt': 100,
      'track.pitchMm': 60,
      'track.sprocketTeeth': 9,
      'stages.0.ratio': 15,
    },
  },
]

/** Short grass, until the ground is chosen. *Source:* `reference/ground.json`, common practice, no source. */
const firstGround = { rollingCoefficient: 0.08, gripCoefficient: 0.55, slipPercent: 5 } as const

/** Estimates that are made of a reduction's own entries come with it and not with the build. */
const wholeBuild = assumptions.map(({ path }) => path).filter((path) => !path.includes('*'))

/** A new build: every required entry, and what lets it be worked out, all of them assumed until they are entered. */
export function newBuild(): StoredBuild {
  const [kind] = startKinds
  const bare: StoredBuild = {
    format: buildFormat,
    version: buildVersion,
    name: 'New build',
    pack: { chemistry: 'lipo', series: 4, capacityMah: 5000, cellResistanceMilliohm: 3 },
    motor: {
      kvRpmPerVolt: 1000,
      resistanceMilliohm: 40,
      noLoadAmps: 1,
      noLoadVolts: 12,
      poleCount: 14,
      ratedMaxRpm: 20_000,
    },
    stages: [{ kind: 'fixed', ratio: 10 }],
    track: { pitchMm: 20, sprocketTeeth: 10, loopPitches: 60, massGPerM: 600 },
    vehicle: { massKg: 6 },
    ground: { model: 'coefficient', ...firstGround },
  }
  const valued = Object.entries(kind?.values ?? {}).reduce(
    (build, [path, value]) => withAssumed(build, path, value),
    bare,
  )
  const grounded = Object.entries(firstGround).reduce(
    (build, [key, value]) => withAssumed(build, `ground.${key}`, value),
    valued,
  )
  return wholeBuild.reduce((build, path) => withAssumed(build, path), grounded)
}

/**
 * The build as one of another kind: loops and motors as the kind says, and its numbers for all that nobody has entered.
 */
export function withStartKind(stored: StoredBuild, id: string): StoredBuild {
  const kind = startKinds.find((one) => one.id === id)
  if (kind === undefined) return stored
  const shaped = withEntry(withEntry(stored, 'track.count', kind.loops), 'motor.count', kind.motors)
  const valued = Object.entries(kind.values).reduce(
    (build, [path, value]) => (isAssumed(build, path) ? withEntry(build, path, value) : build),
    shaped,
  )
  return withAssumptions(valued)
}
