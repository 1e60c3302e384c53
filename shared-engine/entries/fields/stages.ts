import { beltProfileIds } from '../../reference/belts.ts'
import { chainSizeIds } from '../../reference/chains.ts'
import { materialIds, materialOf } from '../../reference/materials.ts'
import type { StageKindId } from '../stage-kinds.ts'
import type { Condition, FieldTable } from './field.ts'

export const materialChoices = materialIds.map((value) => ({ value, label: materialOf(value).label }))

const kinds = (...among: StageKindId[]): Condition => ({ entry: 'stages.*.kind', among })
const gear = kinds('gear')
const belt = kinds('belt')
const chain = kinds('chain')
const toothed = kinds('gear', 'belt', 'chain')
const teeth = { kind: 'count', counted: 'teeth', low: 4, high: 1000, whole: true, onlyWith: toothed } as const
const material = { kind: 'text', choices: materialChoices, fromTable: true } as const

const everyStage = {
  'stages.*.kind': {
    label: 'Kind of reduction',
    kind: 'text',
    choices: [
      { value: 'gear', label: 'Gears' },
      { value: 'belt', label: 'Toothed belt' },
      { value: 'chain', label: 'Roller chain' },
      { value: 'fixed', label: 'Gearbox of a known ratio' },
    ],
    help: 'What turns the next shaft. A bought gearbox, whose inside you need not check, is one of a known ratio.',
  },
  'stages.*.driverTeeth': {
    ...teeth,
    label: 'Driver’s teeth',
    help: 'Teeth of the wheel on the motor’s side.',
  },
  'stages.*.drivenTeeth': {
    ...teeth,
    label: 'Driven wheel’s teeth',
    help: 'Teeth of the wheel on the track’s side.',
  },
  'stages.*.efficiencyPercent': {
    label: 'Efficiency',
    kind: 'fraction',
    low: 1,
    high: 100,
    default: 97,
    help: 'Power that comes out of what goes in. 97 % suits a clean, well-laid pair; a worm or grit takes far more.',
  },
  'stages.*.shaftDiameterMm': {
    label: 'Driven shaft’s diameter',
    kind: 'length',
    low: 0.5,
    high: 300,
    optional: true,
    help: 'At its thinnest section that carries the torque; less for a keyway or flat.',
    brings: 'The shaft’s limit, together with its material.',
  },
  'stages.*.shaftMaterial': {
    ...material,
    label: 'Driven shaft’s material',
    optional: true,
    help: 'What the shaft of the driven wheel is made of.',
    brings: 'The shaft’s limit, together with its diameter.',
  },
  'stages.*.drivenInertiaGcm2': {
    label: 'Driven inertia',
    kind: 'inertia',
    low: 0,
    high: 1e7,
    default: 0,
    help: 'Of the driven wheel and its shaft; 0 leaves it out.',
  },
  'stages.*.ratio': {
    label: 'Ratio',
    kind: 'none',
    low: 0.05,
    high: 200,
    onlyWith: kinds('fixed'),
    help: 'Turns in for one turn out: above 1 slows down.',
    asks: {
      question: 'Which way round is the ratio?',
      conventions: [
        { label: 'Turns in for one turn out', factor: 1 },
        { label: 'Turns out for one turn in', factor: 'inverse' },
      ],
    },
  },
} as const satisfies FieldTable

const gearStage = {
  'stages.*.moduleMm': {
    label: 'Module',
    kind: 'gearModule',
    low: 0.1,
    high: 50,
    onlyWith: gear,
    help: 'Size of the teeth: pitch diameter over number of teeth. Both wheels have the same.',
  },
  'stages.*.faceWidthMm': {
    label: 'Face width',
    kind: 'length',
    low: 0.5,
    high: 500,
    onlyWith: gear,
    help: 'How wide the two wheels overlap: the narrower one.',
  },
  'stages.*.pressureAngleDegrees': {
    label: 'Pressure angle',
    kind: 'angle',
    low: 14.5,
    high: 25,
    default: 20,
    onlyWith: gear,
    help: 'Slant of the flanks; 20° for nearly all gears of today. Strength is figured for 20° teeth.',
  },
  'stages.*.driverMaterial': {
    ...material,
    label: 'Driver’s material',
    onlyWith: gear,
    help: 'What the wheel on the motor’s side is made of.',
  },
  'stages.*.drivenMaterial': {
    ...material,
    label: 'Driven wheel’s material',
    onlyWith: gear,
    help: 'What the wheel on the track’s side is made of.',
  },
  'stages.*.finish': {
    label: 'Finish of the teeth',
    kind: 'text',
    choices: [
      { value: 'cast', label: 'Cast or printed' },
      { value: 'milled', label: 'Milled' },
      { value: 'hobbed', label: 'Hobbed or shaped' },
      { value: 'ground', label: 'Ground or shaved' },
    ],
    default: 'milled',
    onlyWith: gear,
    help: 'The rougher the teeth, the more speed adds to their load.',
  },
} as const satisfies FieldTable

const beltOrChain = {
  'stages.*.profile': {
    label: 'Belt profile',
    kind: 'text',
    choices: beltProfileIds.map((value) => ({ value, label: value })),
    fromTable: true,
    onlyWith: belt,
    help: 'The tooth form and pitch, as printed on the belt.',
  },
  'stages.*.widthMm': {
    label: 'Belt width',
    kind: 'length',
    low: 1,
    high: 500,
    onlyWith: belt,
    help: 'Width of the belt itself.',
  },
  'stages.*.allowableTensionN': {
    label: 'Allowable tension',
    kind: 'force',
    low: 1,
    high: 1e6,
    optional: true,
    onlyWith: belt,
    help: 'The maker’s working tension for this width. Needed for a profile without an open rating; wins over the table.',
    brings: 'The belt’s limit where its profile has no open rating.',
  },
  'stages.*.size': {
    label: 'Chain size',
    kind: 'text',
    choices: chainSizeIds.map((value) => ({ value, label: value })),
    fromTable: true,
    onlyWith: chain,
    help: 'The standard’s number, as stamped on the plates.',
  },
  'stages.*.strands': {
    label: 'Strands',
    kind: 'count',
    counted: 'strands',
    low: 1,
    high: 4,
    whole: true,
    default: 1,
    onlyWith: chain,
    help: 'Chains side by side on common pins.',
  },
  'stages.*.centreMm': {
    label: 'Distance of the shafts',
    kind: 'length',
    low: 5,
    high: 10_000,
    optional: true,
    onlyWith: kinds('belt', 'chain'),
    requiredWith: belt,
    help: 'Between the middles of the two shafts.',
    brings: 'The chain’s length in links, and the distance that fits it.',
  },
} as const satisfies FieldTable

export const stageFields = { ...everyStage, ...gearStage, ...beltOrChain }
