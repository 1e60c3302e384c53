import type { GroupNode } from '../rows/group.ts'
import type { Ask } from '../rows/row.ts'
import { isMaterialId, materialOf } from '../../reference/materials.ts'
import type { DerivedDefault } from '../rows/row.ts'
import { loopRows } from './loop.ts'
import { tooth } from './tooth.ts'
import { trackShaft } from './track-shaft.ts'
import { fromEngine } from '../../units/convert.ts'

const printedStrength = {
  says: 'that of the tooth’s material in the table, 100 % of an own one',
  of: (entries) => {
    const material = entries.word('track.tooth.material')
    if (material === undefined || !isMaterialId(material)) return 100
    return fromEngine(materialOf(material).knockdown, 'fraction')
  },
} as const satisfies DerivedDefault

const oneLoopOrAll = {
  question: 'Is this for one loop or for all of them?',
  conventions: [
    { label: 'One loop', factor: 1 },
    { label: 'All loops together', factor: 'perLoop' },
  ],
} as const satisfies Ask

export const track = {
  label: 'Track',
  sections: [
    '',
    'Loop',
    'Tension and stretch',
    'Drive tooth',
    'How the teeth share',
    'Climbing out of mesh',
    'Sprocket shaft',
  ],
  entries: {
    count: {
      label: 'Loops',
      rank: 1,
      kind: 'count',
      counted: 'loops',
      low: 1,
      high: 4,
      whole: true,
      default: 1,
      help: 'Tracks side by side; they share the load equally.',
    },
    pitchMm: {
      label: 'Drive pitch',
      kind: 'length',
      low: 1,
      high: 500,
      usual: [4, 130],
      help: 'From one drive tooth or link to the next. Measure ten under working tension and divide.',
    },
    sprocketTeeth: {
      label: 'Teeth of the drive sprocket',
      rank: -1,
      kind: 'count',
      counted: 'teeth',
      low: 4,
      high: 200,
      usual: [5, 40],
      whole: true,
      lever: { step: 1, least: 6, most: 40, times: 3 },
      axis: { offered: 1, turns: 4 },
      help: 'Pitches that one turn of the sprocket moves the track. Outer diameter and tread play no part.',
    },
    loopPitches: {
      label: 'Pitches round the loop',
      kind: 'count',
      counted: 'pitches',
      low: 10,
      high: 2000,
      whole: true,
      help: 'Count once round.',
    },
    massGPerM: {
      label: 'Mass per metre of one loop',
      kind: 'linearDensity',
      low: 1,
      high: 100_000,
      help: 'Weigh one loop and divide by its length round.',
      asks: oneLoopOrAll,
    },
    pretensionN: {
      label: 'Static tension of one loop',
      section: 'Loop',
      kind: 'force',
      low: 0,
      high: 100_000,
      optional: true,
      lever: { step: 1, times: 5 },
      help: 'Pull in the track at rest; none is counted where it is empty. Hang a known weight at mid-span, measure the sag.',
      brings: 'At which speed the loop lifts off its wheels, and how far it stands off.',
      asks: {
        question: 'Is this the pull in the track or the force on the tensioner?',
        conventions: [
          { label: 'Pull in the track', factor: 1 },
          { label: 'Force on an idler that the track wraps half round', factor: 0.5 },
        ],
      },
    },
    breakingTensionN: {
      label: 'Breaking tension of one loop',
      section: 'Loop',
      kind: 'force',
      low: 1,
      high: 10_000_000,
      optional: true,
      lever: { step: 10, way: 'more', times: 3 },
      help: 'At its weakest section, usually the joint. Pull a short piece apart, behind a shield, or ask the supplier.',
      brings: 'The limits on loop tension and on the speed at which the loop’s own mass tears it.',
    },
    wrapDegrees: {
      label: 'Wrap on the sprocket',
      section: 'How the teeth share',
      kind: 'angle',
      low: 10,
      high: 350,
      default: 180,

      // More than this the loop cannot come round without crossing itself [assumption].
      lever: { step: 1, least: 90, most: 220 },
      help: 'Arc over which the track lies on the drive sprocket.',
    },
    teethAcross: {
      label: 'Rows of teeth across',
      section: 'How the teeth share',
      kind: 'count',
      counted: 'rows',
      low: 1,
      high: 12,
      whole: true,
      default: 1,
      lever: { step: 1, most: 4 },
      help: 'Drive teeth side by side across one loop.',
    },
    sharePercent: {
      label: 'How evenly teeth share',
      section: 'How the teeth share',
      kind: 'fraction',
      low: 0,
      high: 100,
      default: 20,
      help: '100 %: every engaged tooth carries the same. 0 %: one carries all. 20 % suits a home-made pitch. Used where stiffness is not given.',
    },
    loopStiffnessN: {
      label: 'Stiffness of the loop',
      section: 'How the teeth share',
      rank: 1,
      kind: 'force',
      low: 10,
      high: 1e9,
      optional: true,
      help: 'Pull that would double its length if it stayed elastic: hang a weight, divide it by the relative stretch.',
      brings:
        'How the load spreads over the teeth, computed rather than assumed, and whether teeth climb out.',
    },
    pitchErrorMm: {
      label: 'Pitch error',
      section: 'How the teeth share',
      rank: 1,
      kind: 'length',
      low: -5,
      high: 5,
      default: 0,
      help: 'The slack track’s pitch less the sprocket’s. 0.1 mm a tooth can put all load on one tooth.',
    },
    knockdownPercent: {
      label: 'Strength that is left',
      section: 'How the teeth share',
      kind: 'fraction',
      low: 1,
      high: 100,
      defaultFrom: printedStrength,
      lever: { step: 1, way: 'more' },
      help: 'After printing direction, moulding or gluing. Across printed layers 50 to 70 % is common: test a coupon.',
    },
    internalDragN: {
      label: 'Drag of the track itself',
      section: 'Loop',
      kind: 'force',
      low: 0,
      high: 10_000,
      default: 0,
      help: 'What turning all loops and their wheels takes; often 6 % of the weight. Empty: not known. Pull the machine with the gears out.',
    },
    internalDragNPerMps: {
      label: 'Drag that grows with speed',
      section: 'Loop',
      kind: 'dragPerSpeed',
      low: 0,
      high: 1000,
      default: 0,
      help: 'What each metre per second adds to the drag of all loops together.',
    },
    ...loopRows,
    tooth,
    shaft: trackShaft,
  },
} as const satisfies GroupNode
