import type { Rows, UnionNode } from '../rows/group.ts'
import type { Row } from '../rows/row.ts'
import { fromMaterials } from './material.ts'

const size = { kind: 'length', low: 1, high: 500 } as const

const kind = {
  kind: {
    label: 'Kind of joint',
    kind: 'text',
    choices: [
      { value: 'key', label: 'Parallel key' },
      { value: 'screw', label: 'Grub screw' },
      { value: 'pin', label: 'Cross pin' },
      { value: 'clamp', label: 'Clamped hub' },
      { value: 'flat', label: 'Flat on the shaft' },
    ],
    help: 'What keeps the wheel from turning on its shaft.',
  },
} as const satisfies Rows

const length = {
  ...size,
  label: 'Length of the joint',
  lever: { step: 1, way: 'more' },
  help: 'Along the shaft: how much of key or flat the hub really covers.',
} as const satisfies Row

const key = { ...kind, lengthMm: length } as const satisfies Rows

const screw = {
  ...kind,
  screwMm: {
    label: 'Size of the grub screw',
    kind: 'length',
    low: 1.5,
    high: 25.4,
    lever: { step: 0.5, way: 'more' },
    help: 'Its thread: 3 for M3. What it holds is for a cup point at its seating torque on a shaft softer than the screw.',
  },
  count: {
    label: 'Grub screws',
    kind: 'count',
    counted: 'screws',
    low: 1,
    high: 6,
    whole: true,
    default: 1,
    lever: { step: 1, way: 'more' },
    help: 'Round or along the hub; each is taken to hold as much as one alone.',
  },
} as const satisfies Rows

const pin = {
  ...kind,
  pinMm: {
    label: 'Diameter of the pin',
    kind: 'length',
    low: 0.3,
    high: 50,
    lever: { step: 0.1 },
    help: 'Of the pin that goes across hub and shaft.',
  },
  pinMaterial: {
    ...fromMaterials,
    label: 'Material of the pin',
    default: 'silver-steel',
    help: 'What would shear. Silver steel is the usual dowel.',
  },
} as const satisfies Rows

const clamp = {
  ...kind,
  clampForceN: {
    label: 'Clamping force',
    kind: 'force',
    low: 1,
    high: 1e6,
    lever: { step: 100, way: 'more' },
    help: 'Of all its screws together: about torque over 0.2 times the thread’s diameter for each dry screw.',
  },
  friction: {
    label: 'Friction of the clamped hub',
    kind: 'none',
    low: 0.01,
    high: 1,
    default: 0.15,
    help: 'Between hub and shaft; 0.15 for clean, dry metal, less with oil.',
  },
} as const satisfies Rows

const flat = {
  ...kind,
  lengthMm: length,
  flatDepthMm: {
    label: 'Depth of the flat',
    kind: 'length',
    low: 0.05,
    high: 100,
    lever: { step: 0.1 },
    help: 'How much is taken off the round shaft, measured across the flat; less than half of its diameter.',
  },
} as const satisfies Rows

/** Every kind of joint with rows that each has besides; the rows stand under a heading of its part's form. */
function variantsUnder<const R extends Rows>(more: R) {
  return {
    key: { ...key, ...more },
    screw: { ...screw, ...more },
    pin: { ...pin, ...more },
    clamp: { ...clamp, ...more },
    flat: { ...flat, ...more },
  } as const
}

/** A wheel on a shaft of which the build knows diameter and material. */
export const joint = {
  label: 'Wheel on its shaft',
  whenAbsent: 'none',
  brings: 'Whether the wheel turns on its shaft: once, for good, and in a jam.',
  by: 'kind',
  variants: variantsUnder({}),
} as const satisfies UnionNode

/** The pinion on the motor's shaft, of which nothing else of the build speaks. */
export const motorJoint = {
  label: 'Pinion on the shaft',
  whenAbsent: 'none',
  brings: 'Whether the pinion turns on the motor’s shaft: once, for good, and in a jam.',
  by: 'kind',
  variants: variantsUnder({
    shaftDiameterMm: {
      label: 'Diameter of the motor’s shaft',
      kind: 'length',
      low: 0.5,
      high: 300,
      lever: { step: 0.5, way: 'more', times: 2 },
      help: 'Where the pinion or the first wheel sits.',
    },
    shaftMaterial: {
      ...fromMaterials,
      label: 'Material of the motor’s shaft',
      default: 'steel-c45',
      help: 'Few makers say; hardened shafts hold a little more than is counted.',
    },
  }),
} as const satisfies UnionNode
