import { materialIds } from '../../reference/materials.ts'
import type { Rows, UnionNode } from '../rows/group.ts'
import { materialChoices } from './material.ts'

const size = { kind: 'length', low: 0.2, high: 200 } as const
const strength = { kind: 'stress', low: 0.01, high: 3000 } as const

const anyMaterial = {
  heightMm: {
    ...size,
    label: 'Tooth height',
    lever: { step: 0.1, times: 2 },
    help: 'From root to tip.',
    section: 'Drive tooth',
  },
  rootMm: {
    ...size,
    label: 'Root along travel',
    section: 'Drive tooth',
    lever: { step: 0.1, times: 2 },
    help: 'How thick the tooth is at its root, front to back.',
  },
  widthMm: {
    ...size,
    label: 'Width across',
    lever: { step: 0.1, times: 3 },
    help: 'How wide one tooth is, across the track.',
    section: 'Drive tooth',
  },
  loadHeightMm: {
    label: 'Height of the load',
    section: 'Drive tooth',
    kind: 'length',
    // Bound by the tooth's height alone; the low end only keeps it from being nothing.
    low: 0.001,
    high: 200,
    optional: true,
    help: 'Where the sprocket presses, above the root; below the tip. Half of the tooth height where it is left empty.',
  },
  modulusMpa: {
    label: 'Stiffness of the tooth’s material',
    section: 'Climbing out of mesh',
    rank: 1,
    kind: 'stress',
    low: 0.1,
    high: 500_000,
    optional: true,
    help: 'Young’s modulus. That of the material where it is left empty.',
    brings: 'For a custom material: load sharing computed from stiffness.',
  },
  flankDegrees: {
    label: 'Slant of the flank',
    section: 'Climbing out of mesh',
    kind: 'angle',
    low: 0,
    high: 60,
    optional: true,
    lever: { step: 1 },
    help: 'Between the pressed flank and the radial direction. Steeper slants push the tooth out of mesh.',
    brings: 'Whether teeth climb out of the sprocket, once the loop’s stiffness is known.',
  },
  flankFriction: {
    label: 'Friction of the flank',
    section: 'Climbing out of mesh',
    kind: 'none',
    low: 0,
    high: 2,
    default: 0.3,
    help: 'Between tooth and sprocket; holds the tooth in. 0.1 wet or greased, 0.3 dry plastic, more for rubber.',
  },
  material: {
    label: 'Material of the tooth',
    section: 'Drive tooth',
    rank: -2,
    kind: 'text',
    choices: [...materialChoices, { value: 'custom', label: 'Own material, own strengths' }],
    fromTable: true,
    lever: { choices: materialIds },
    help: 'What would shear. Own strengths from a broken sample beat any table.',
  },
} as const satisfies Rows

const ownStrengths = {
  shearStrengthMpa: {
    ...strength,
    label: 'Shear strength',
    section: 'Drive tooth',
    rank: -1,
    help: 'Stress at which a sample shears off.',
  },
  tensileStrengthMpa: {
    ...strength,
    label: 'Tensile strength',
    section: 'Drive tooth',
    rank: -1,
    help: 'Stress at which a sample tears.',
  },
  bearingStrengthMpa: {
    ...strength,
    label: 'Bearing strength',
    section: 'Drive tooth',
    rank: -1,
    help: 'Pressure at which the flank is crushed; 1.2 times the tensile strength for plastics and rubbers.',
  },
} as const satisfies Rows

const working = {
  kind: 'stress',
  low: 0.001,
  high: 3000,
  optional: true,
  section: 'Drive tooth',
  rank: 1,
} as const

/** What an own material bears for good. */
const ownEndurance = {
  workShearMpa: {
    ...working,
    label: 'Shear for good',
    help: 'Shear stress that comes and goes millions of times without a crack; a tenth to a quarter of the strength.',
    brings: 'Whether the teeth of an own material last in shear.',
  },
  workTensileMpa: {
    ...working,
    label: 'Bending for good',
    help: 'Tensile stress that comes and goes millions of times without a crack.',
    brings: 'Whether the teeth of an own material last in bending.',
  },
  workBearingMpa: {
    ...working,
    label: 'Pressing for good',
    help: 'Pressure on the flank that comes and goes millions of times without wear that matters.',
    brings: 'Whether the teeth of an own material last in pressing.',
  },
} as const satisfies Rows

export const tooth = {
  label: 'Drive tooth',
  brings: 'The stresses in the teeth and their limits: shear, bending at the root, bearing.',
  whenAbsent: 'none',
  by: 'material',
  variants: { custom: { ...anyMaterial, ...ownStrengths, ...ownEndurance } },
  others: anyMaterial,
} as const satisfies UnionNode
