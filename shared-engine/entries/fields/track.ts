import type { Ask, Condition, FieldTable } from './field.ts'
import { materialChoices } from './stages.ts'

const oneLoopOrAll = {
  question: 'Is this for one loop or for all of them?',
  conventions: [
    { label: 'One loop', factor: 1 },
    { label: 'All loops together', factor: 'perLoop' },
  ],
} as const satisfies Ask

export const trackFields = {
  'track.count': {
    label: 'Loops',
    kind: 'count',
    counted: 'loops',
    low: 1,
    high: 4,
    whole: true,
    default: 1,
    help: 'Tracks side by side; they share the load equally.',
  },
  'track.pitchMm': {
    label: 'Drive pitch',
    kind: 'length',
    low: 1,
    high: 500,
    help: 'From one drive tooth or link to the next. Measure ten under working tension and divide.',
  },
  'track.sprocketTeeth': {
    label: 'Teeth of the drive sprocket',
    kind: 'count',
    counted: 'teeth',
    low: 4,
    high: 200,
    whole: true,
    help: 'Pitches that one turn of the sprocket moves the track. Outer diameter and tread play no part.',
  },
  'track.loopPitches': {
    label: 'Pitches round the loop',
    kind: 'count',
    counted: 'pitches',
    low: 10,
    high: 2000,
    whole: true,
    help: 'Count once round.',
  },
  'track.massGPerM': {
    label: 'Mass per metre of one loop',
    kind: 'linearDensity',
    low: 1,
    high: 100_000,
    help: 'Weigh one loop and divide by its length round.',
    asks: oneLoopOrAll,
  },
  'track.pretensionN': {
    label: 'Static tension of one loop',
    kind: 'force',
    low: 0,
    high: 100_000,
    default: 0,
    help: 'Pull in the track at rest. Hang a known weight at mid-span and measure the sag.',
    asks: {
      question: 'Is this the pull in the track or the force on the tensioner?',
      conventions: [
        { label: 'Pull in the track', factor: 1 },
        { label: 'Force on an idler that the track wraps half round', factor: 0.5 },
      ],
    },
  },
  'track.breakingTensionN': {
    label: 'Breaking tension of one loop',
    kind: 'force',
    low: 1,
    high: 10_000_000,
    optional: true,
    help: 'At its weakest section, usually the joint. Pull a short piece apart, behind a shield, or ask the supplier.',
    brings: 'The limits on loop tension and on the speed at which the loop’s own mass tears it.',
  },
  'track.wrapDegrees': {
    label: 'Wrap on the sprocket',
    kind: 'angle',
    low: 10,
    high: 350,
    default: 180,
    help: 'Arc over which the track lies on the drive sprocket.',
  },
  'track.teethAcross': {
    label: 'Rows of teeth across',
    kind: 'count',
    counted: 'rows',
    low: 1,
    high: 12,
    whole: true,
    default: 1,
    help: 'Drive teeth side by side across one loop.',
  },
  'track.sharePercent': {
    label: 'How evenly teeth share',
    kind: 'fraction',
    low: 0,
    high: 100,
    default: 50,
    help: '100 %: every engaged tooth carries the same. 0 %: one carries all. Used where stiffness is not given.',
  },
  'track.loopStiffnessN': {
    label: 'Stiffness of the loop',
    kind: 'force',
    low: 10,
    high: 1e9,
    optional: true,
    help: 'Pull that would double its length if it stayed elastic: hang a weight, divide it by the relative stretch.',
    brings: 'How the load spreads over the teeth, computed rather than assumed, and whether teeth climb out.',
  },
  'track.pitchErrorMm': {
    label: 'Pitch error',
    kind: 'length',
    low: -5,
    high: 5,
    default: 0,
    help: 'The slack track’s pitch less the sprocket’s. 0.1 mm a tooth can put all load on one tooth.',
  },
  'track.knockdownPercent': {
    label: 'Strength that is left',
    kind: 'fraction',
    low: 1,
    high: 100,
    default: 100,
    help: 'After printing direction, moulding or gluing. Across printed layers 50 to 70 % is common: test a coupon.',
  },
  'track.internalDragN': {
    label: 'Drag of the track itself',
    kind: 'force',
    low: 0,
    high: 10_000,
    default: 0,
    help: 'What turning all loops and their wheels takes, whatever the speed. Pull the machine with the gears out.',
  },
  'track.internalDragNPerMps': {
    label: 'Drag that grows with speed',
    kind: 'dragPerSpeed',
    low: 0,
    high: 1000,
    default: 0,
    help: 'What each metre per second adds to the drag of all loops together.',
  },
} as const satisfies FieldTable

const size = { kind: 'length', low: 0.2, high: 200 } as const
const custom: Condition = { entry: 'track.tooth.material', among: ['custom'] }
const strength = { kind: 'stress', low: 0.01, high: 3000, onlyWith: custom } as const

export const toothFields = {
  'track.tooth.heightMm': { ...size, label: 'Tooth height', help: 'From root to tip.' },
  'track.tooth.rootMm': {
    ...size,
    label: 'Root along travel',
    help: 'How thick the tooth is at its root, front to back.',
  },
  'track.tooth.widthMm': { ...size, label: 'Width across', help: 'How wide one tooth is, across the track.' },
  'track.tooth.loadHeightMm': {
    label: 'Height of the load',
    kind: 'length',
    // Bound by the tooth's height alone; the low end only keeps it from being nothing.
    low: 0.001,
    high: 200,
    optional: true,
    help: 'Where the sprocket presses, above the root; below the tip. Half of the tooth height where it is left empty.',
  },
  'track.tooth.modulusMpa': {
    label: 'Stiffness of the tooth’s material',
    kind: 'stress',
    low: 0.1,
    high: 500_000,
    optional: true,
    help: 'Young’s modulus. That of the material where it is left empty.',
    brings: 'For a custom material: load sharing computed from stiffness.',
  },
  'track.tooth.flankDegrees': {
    label: 'Slant of the flank',
    kind: 'angle',
    low: 0,
    high: 60,
    optional: true,
    help: 'Between the pressed flank and the radial direction. Steeper slants push the tooth out of mesh.',
    brings: 'Whether teeth climb out of the sprocket, once the loop’s stiffness is known.',
  },
  'track.tooth.flankFriction': {
    label: 'Friction of the flank',
    kind: 'none',
    low: 0,
    high: 2,
    default: 0.3,
    help: 'Between tooth and sprocket; holds the tooth in. 0.1 wet or greased, 0.3 dry plastic, more for rubber.',
  },
  'track.tooth.material': {
    label: 'Material of the tooth',
    kind: 'text',
    choices: [...materialChoices, { value: 'custom', label: 'Own material, own strengths' }],
    fromTable: true,
    help: 'What would shear. Own strengths from a broken sample beat any table.',
  },
  'track.tooth.shearStrengthMpa': {
    ...strength,
    label: 'Shear strength',
    help: 'Stress at which a sample shears off.',
  },
  'track.tooth.tensileStrengthMpa': {
    ...strength,
    label: 'Tensile strength',
    help: 'Stress at which a sample tears.',
  },
  'track.tooth.bearingStrengthMpa': {
    ...strength,
    label: 'Bearing strength',
    help: 'Pressure at which the flank is crushed; 1.2 times the tensile strength for plastics and rubbers.',
  },
} as const satisfies FieldTable
