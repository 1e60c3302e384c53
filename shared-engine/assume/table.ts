import type { EntryReader } from '../entries/entry-reader.ts'
import { patternOf } from '../entries/path.ts'
import { beltProfileIds, beltProfileOf } from '../reference/belts.ts'
import { chemistryIds, openCircuitVolts } from '../reference/chemistry.ts'
import type { Assumption } from './assumption.ts'
import {
  assumedCellResistance,
  assumedCentre,
  assumedContactLength,
  assumedContactWidth,
  assumedDragCoefficient,
  assumedFrontalArea,
  assumedLoopDensity,
  assumedLoopLength,
  assumedTrackDrag,
} from './machine.ts'
import {
  assumedCurrentLimit,
  assumedInertia,
  assumedMotorMass,
  assumedNoLoadAmps,
  assumedRatedRpm,
  assumedResistance,
  isInnerRotor,
  usualPoles,
} from './motor.ts'

/** A value of numbers that are all sound; undefined where one is not. */
function of<Key extends string>(
  paths: Readonly<Record<Key, string>>,
  value: (numbers: Readonly<Record<Key, number>>) => number,
): (entries: EntryReader) => number | undefined {
  const named = Object.entries<string>(paths)
  return (entries) => {
    const read = named.map(([key, path]) => [key, entries.si(path)] as const)
    if (read.some(([, number]) => number === undefined)) return undefined
    return value(Object.fromEntries(read) as Record<Key, number>)
  }
}

const motorPaths = { kv: 'motor.kvRpmPerVolt', mass: 'motor.massKg' } as const

/** Whether the rotor turns inside: by the poles where the builder counted them, else by winding and mass. */
function inner(entries: EntryReader, { kv, mass }: { readonly kv: number; readonly mass: number }): boolean {
  const counted = entries.raw('origins') as Readonly<Record<string, unknown>> | undefined
  const isAssumed = counted?.['motor.poleCount'] === 'assumed'
  return isInnerRotor(kv, mass, isAssumed ? null : (entries.number('motor.poleCount') ?? null))
}

/** The same with the family of the motor. */
const ofMotor =
  (value: (motor: { readonly kv: number; readonly mass: number }, isInner: boolean) => number) =>
  (entries: EntryReader): number | undefined =>
    of(motorPaths, (motor) => value(motor, inner(entries, motor)))(entries)

/** Volts of the pack half full: what its label rounds to. */
function nominalVolts(entries: EntryReader): number | undefined {
  const word = entries.word('pack.chemistry')
  const chemistry = chemistryIds.find((id) => id === word)
  const series = entries.number('pack.series')
  return chemistry === undefined || series === undefined
    ? undefined
    : series * openCircuitVolts(chemistry, 0.5)
}

const loopLength = of({ pitch: 'track.pitchMm', pitches: 'track.loopPitches' }, ({ pitch, pitches }) => {
  return pitch * pitches
})

const ofMotorAndPack = 'the speed constant and mass of the motor'

/**
 * Every estimate, in the order in which they rest on each other. What is not in it and yet assumed is a plain start value.
 *
 * *Source:* the functions that each calls.
 */
export const assumptions: readonly Assumption[] = [
  {
    path: 'motor.massKg',
    of: of({ mass: 'vehicle.massKg', count: 'motor.count' }, ({ mass, count }) =>
      assumedMotorMass(mass, count),
    ),
    within: 2,
    from: 'the mass of the machine',
  },
  {
    path: 'motor.poleCount',
    of: ofMotor((_, isInner) => usualPoles(isInner)),
    within: 1,
    from: ofMotorAndPack,
  },
  {
    path: 'motor.resistanceMilliohm',
    of: ofMotor(({ kv, mass }, isInner) => assumedResistance(kv, mass, isInner)),
    within: 2,
    from: ofMotorAndPack,
  },
  {
    path: 'motor.noLoadAmps',
    of: ofMotor(({ kv, mass }) => assumedNoLoadAmps(kv, mass)),
    within: 2,
    from: ofMotorAndPack,
  },
  { path: 'motor.noLoadVolts', of: nominalVolts, within: 1, from: 'the cells of the pack' },
  {
    path: 'motor.ratedMaxRpm',
    of: ofMotor(({ mass }, isInner) => assumedRatedRpm(mass, isInner)),
    within: 1.5,
    from: 'the size of the motor',
  },
  {
    path: 'motor.rotorInertiaGcm2',
    of: ofMotor(({ mass }, isInner) => assumedInertia(mass, isInner)),
    within: 2,
    from: ofMotorAndPack,
  },
  {
    path: 'controller.currentLimitAmps',
    of: (entries) => {
      const [mass, volts] = [entries.si('motor.massKg'), nominalVolts(entries)]
      return mass === undefined || volts === undefined ? undefined : assumedCurrentLimit(mass, volts)
    },
    within: 2,
    from: 'the mass of the motor and the cells of the pack',
  },
  {
    path: 'pack.cellResistanceMilliohm',
    of: (entries) => {
      const word = entries.word('pack.chemistry')
      const chemistry = chemistryIds.find((id) => id === word)
      const [charge, parallel] = [entries.si('pack.capacityMah'), entries.number('pack.parallel')]
      if (chemistry === undefined || charge === undefined || parallel === undefined) return undefined
      return assumedCellResistance(charge / parallel, chemistry)
    },
    within: 2,
    from: 'the capacity and the kind of cell',
  },
  {
    path: 'track.loopPitches',
    of: of(
      { mass: 'vehicle.massKg', pitch: 'track.pitchMm', teeth: 'track.sprocketTeeth' },
      // At least three times round the sprocket, or the loop would hardly reach the ground.
      ({ mass, pitch, teeth }) => Math.max(assumedLoopLength(mass) / pitch, 3 * teeth),
    ),
    within: 1.5,
    from: 'the mass of the machine',
  },
  {
    path: 'vehicle.contactLengthMm',
    of: (entries) => {
      const loop = loopLength(entries)
      return loop === undefined ? undefined : assumedContactLength(loop)
    },
    within: 1.5,
    from: 'the length of the loop',
  },
  {
    path: 'vehicle.contactWidthMm',
    of: (entries) => {
      const [loop, loops] = [loopLength(entries), entries.number('track.count')]
      return loop === undefined || loops === undefined ? undefined : assumedContactWidth(loop, loops)
    },
    within: 2,
    from: 'the length of the loop',
  },
  {
    path: 'track.massGPerM',
    of: of({ pitch: 'track.pitchMm', width: 'vehicle.contactWidthMm' }, ({ pitch, width }) => {
      return assumedLoopDensity(pitch, width)
    }),
    within: 2,
    from: 'the pitch and width of the loop',
  },
  {
    path: 'track.internalDragN',
    of: of({ mass: 'vehicle.massKg' }, ({ mass }) => assumedTrackDrag(mass)),
    within: 2,
    from: '6 % of the weight',
  },
  {
    path: 'vehicle.frontalAreaM2',
    of: of({ mass: 'vehicle.massKg' }, ({ mass }) => assumedFrontalArea(mass)),
    within: 2,
    from: 'the mass of the machine',
  },
  {
    path: 'vehicle.dragCoefficient',
    of: () => assumedDragCoefficient,
    within: 1.5,
    from: 'a body with blunt edges',
  },
  { path: 'stages.*.centreMm', of: beltCentre, within: 1.5, from: 'the teeth of both pulleys' },
]

function beltCentre(entries: EntryReader, group: string): number | undefined {
  const word = entries.word(`${group}.profile`)
  const profile = beltProfileIds.find((id) => id === word)
  const driver = entries.number(`${group}.driverTeeth`)
  const driven = entries.number(`${group}.drivenTeeth`)
  if (profile === undefined || driver === undefined || driven === undefined) return undefined
  return assumedCentre(driver + driven, beltProfileOf(profile).pitch)
}

const byPattern: ReadonlyMap<string, Assumption> = new Map(assumptions.map((one) => [one.path, one]))

/** The estimate of an entry; undefined where none is made of others. */
export function assumptionOf(path: string): Assumption | undefined {
  return byPattern.get(patternOf(path))
}
