import type { Build } from '../entries/schema.ts'
import type { LimitWorking } from '../workings/limit.ts'
import { freeBeltSpeed } from '../workings/loads.ts'
import { liftOffWorking, meshWorking, toothStress, trackTension } from '../workings/loop.ts'
import { allowedStress, climbing, type Strength } from '../workings/strength.ts'
import { absentOf } from './limit.ts'
import type { PartLimitFacts } from './part.ts'
import { lackingForSharing } from './stop-needs.ts'

const base = { question: 'hold', sense: 'maximum' } as const
const stress = { ...base, unit: 'Pa', kind: 'stress', needs: ['track.tooth'] } as const

const strengthSource =
  'statics of the tooth; strengths are typical handbook values, or the builder’s own test'

const stressWorking = (title: string, strength: Strength): LimitWorking => ({
  title,
  source: strengthSource,
  write: (d, row) => {
    const actual = toothStress(d, row.case, strength)
    allowedStress(d, strength)
    return { actual, allowed: 'S_f' }
  },
})

const lastingAssumption =
  'What a tooth bears for good is an assumption inside published bands, or from memory: a test of the very tooth beats it.'

const lastingWorking = (title: string, strength: Strength): LimitWorking => ({
  ...stressWorking(title, strength),
  assumptions: [lastingAssumption],
  missing: ({ build }) => {
    const { tooth } = build.track
    if (tooth?.material !== 'custom' || tooth[workEntries[strength]] !== undefined) return null
    return { why: `it needs what is not entered: track.tooth.${workEntries[strength]}.` }
  },
  write: (d, row) => {
    const actual = toothStress(d, row.case, strength)
    allowedStress(d, strength, 'work')
    return { actual, allowed: 'S_f' }
  },
})

const workEntries = { shear: 'workShearMpa', tensile: 'workTensileMpa', bearing: 'workBearingMpa' } as const

/** A custom tooth may leave out what lasts. */
const lackingWork = (strength: Strength) => (build: Build) => {
  const { tooth } = build.track
  if (tooth === undefined) return ['track.tooth']
  return tooth.material === 'custom' ? absentOf(build, [`track.tooth.${workEntries[strength]}`]) : []
}

/** Sharing by stiffness, and the flank where there is a tooth. */
function lackingForClimb(build: Build): readonly string[] {
  const { tooth } = build.track
  const flank = tooth !== undefined && tooth.flankDegrees === undefined ? ['track.tooth.flankDegrees'] : []
  return [...lackingForSharing(build), ...flank]
}

const climbFacts = {
  ...base,
  unit: '1',
  kind: 'none',
  needs: ['track.tooth', 'track.loopStiffnessN', 'track.tooth.flankDegrees'],
  lacking: lackingForClimb,
  working: {
    title: 'How close the worst row of teeth is to being pushed out of the sprocket.',
    source: 'wedge with friction against the tension that wraps the sprocket',
    assumptions: ['Flanks are rigid, and these cases alone are looked at: a smaller load can be worse.'],
    missing: ({ machine }) =>
      machine.track.tooth !== null && machine.track.tooth.modulus === null
        ? { why: 'it needs the stiffness of the tooth’s own material (track.tooth.modulusMpa).' }
        : null,
    unformed: 'nothing holds the pushed row in: it counts as over.',
    write: (d, row) => {
      climbing(d, row)
      d.given('C_1', ['none', 'where a row lifts out'], 1)
      return { actual: 'C', allowed: 'C_1' }
    },
  },
} as const satisfies Omit<PartLimitFacts, 'group' | 'label'>

const tensionFacts = { ...base, unit: 'N', kind: 'force', needs: ['track.breakingTensionN'] } as const

/** Loads that must not break anything once. */
export const onceLoads = {
  'track.tooth-shear': {
    group: 'holds',
    label: 'Drive tooth shear, once',
    ...stress,
    working: stressWorking(
      'The shear at the root of the most loaded tooth against what its material bears once.',
      'shear',
    ),
  },
  'track.tooth-bending': {
    group: 'holds',
    label: 'Drive tooth bending, once',
    ...stress,
    working: stressWorking(
      'The bending of the most loaded tooth against what its material bears once.',
      'tensile',
    ),
  },
  'track.tooth-bearing': {
    group: 'holds',
    label: 'Drive tooth pressing, once',
    ...stress,
    working: stressWorking(
      'The pressure on the most loaded flank against what its material bears once.',
      'bearing',
    ),
  },
  'track.tooth-climb': { group: 'holds', label: 'Teeth climbing out of the sprocket', ...climbFacts },
  'track.tension': {
    group: 'holds',
    label: 'Loop tension, once',
    ...tensionFacts,
    working: {
      title: 'The loop’s greatest tension in ordinary use against what breaks it.',
      source: 'statics; the limit is the builder’s own pull test or the maker’s',
      write: (d, row) => {
        trackTension(d, row.case)
        d.entry('N_B', 'track.breakingTensionN')
        return { actual: 'N', allowed: 'N_B' }
      },
    },
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

/** The limits of a loop that a fixed tensioner holds; a sprung one takes up its growth. */
const ofFixed =
  (needs: (build: Build) => readonly string[]) =>
  (build: Build): readonly string[] | null =>
    build.track.tensioner === 'sprung' ? null : needs(build)

const liftOffFacts = {
  ...base,
  unit: 'm/s',
  kind: 'speed',
  needs: ['track.pretensionN'],
  lacking: ofFixed((build) => absentOf(build, ['track.pretensionN'])),
} as const

const meshNeeds = ['track.pretensionN', 'track.loopStiffnessN', 'track.tooth'] as const

const meshFacts = {
  ...base,
  unit: 'm',
  kind: 'length',
  needs: meshNeeds,
  lacking: ofFixed((build) => absentOf(build, meshNeeds)),
} as const

/** What a loop on a fixed tensioner does at top speed. */
export const runningLoops = {
  'track.lift-off': {
    group: 'holds',
    label: 'Loop leaving its wheels at top speed',
    ...liftOffFacts,
    working: liftOffWorking('top'),
  },
  'track.mesh': {
    group: 'holds',
    label: 'Loop standing off its wheels at top speed',
    ...meshFacts,
    working: meshWorking('top'),
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

/** Loads that come again and again. */
export const lastingLoads = {
  'track.tooth-shear-lasts': {
    group: 'lasts',
    label: 'Drive tooth shear, for long',
    ...stress,
    lacking: lackingWork('shear'),
    working: lastingWorking(
      'The shear at the root of the most loaded tooth against what its material bears for good.',
      'shear',
    ),
  },
  'track.tooth-bending-lasts': {
    group: 'lasts',
    label: 'Drive tooth bending, for long',
    ...stress,
    lacking: lackingWork('tensile'),
    working: lastingWorking(
      'The bending of the most loaded tooth against what its material bears for good.',
      'tensile',
    ),
  },
  'track.tooth-bearing-lasts': {
    group: 'lasts',
    label: 'Drive tooth pressing, for long',
    ...stress,
    lacking: lackingWork('bearing'),
    working: lastingWorking(
      'The pressure on the most loaded flank against what its material bears for good.',
      'bearing',
    ),
  },
  'track.tension-lasts': {
    group: 'lasts',
    label: 'Loop tension, for long',
    ...tensionFacts,
    lacking: (build) =>
      build.track.workingTensionN === undefined ? absentOf(build, ['track.breakingTensionN']) : [],
    working: {
      title: 'The loop’s greatest tension in ordinary use against what it bears for good.',
      source: 'statics; the limit is the maker’s, or a fifth of what breaks the loop',
      missing: ({ machine }) =>
        machine.track.workingTension === null
          ? { why: 'it needs what is not entered: track.workingTensionN, or track.breakingTensionN.' }
          : null,
      write: (d, row) => {
        trackTension(d, row.case)
        if (d.checked.build.track.workingTensionN !== undefined) {
          d.entry('N_W', 'track.workingTensionN')
        } else {
          d.entry('N_B', 'track.breakingTensionN')
          d.assume('A fifth of what breaks a loop is what it bears for good.')
          d.step('N_W', ['force', 'tension for good'], '0.2 * N_B')
        }
        return { actual: 'N', allowed: 'N_W' }
      },
    },
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

/** A loop that runs free at the fastest speed of the unloaded motor. */
export const freeLoops = {
  'track.burst-speed': {
    group: 'mishap',
    label: 'Loop torn by its own mass',
    ...base,
    unit: 'm/s',
    kind: 'speed',
    needs: ['track.breakingTensionN'],
    working: {
      title: 'The belt speed of the free-running motor against that at which the loop’s own mass tears it.',
      source: 'centrifugal tension of a running belt, any machine-elements text',
      unformed: 'pretension alone breaks the loop: it counts as over.',
      write: (d) => {
        freeBeltSpeed(d)
        d.figure('v_B', 'burstBeltSpeedMps')
        return { actual: 'v_b', allowed: 'v_B' }
      },
    },
  },
  'track.lift-off-free': {
    group: 'mishap',
    label: 'Loop leaving its wheels, running free',
    ...liftOffFacts,
    working: liftOffWorking('free'),
  },
  'track.mesh-free': {
    group: 'mishap',
    label: 'Loop standing off its wheels, running free',
    ...meshFacts,
    working: meshWorking('free'),
  },
  'track.climb-free': { group: 'mishap', label: 'Teeth climbing out, running free', ...climbFacts },
} as const satisfies Readonly<Record<string, PartLimitFacts>>
