import { materialIds } from '../../reference/materials.ts'
import type { StageKindEntries } from '../../entries/parts/stages/kind.ts'
import type { Rows } from '../../entries/rows/group.ts'
import { fromMaterials } from '../../entries/parts/material.ts'
import { everyStage, wheelRows } from '../../entries/parts/stages/every.ts'

const shift = {
  section: 'Strength',
  kind: 'none',
  low: -0.5,
  high: 1,
  default: 0,
  // beyond it the teeth come to a point
  lever: { step: 0.05, least: -0.3, most: 0.6 },
} as const

export const gearRows = {
  ...wheelRows,
  ...everyStage,
  moduleMm: {
    label: 'Module',
    section: 'Strength',
    kind: 'gearModule',
    low: 0.1,
    high: 50,

    // ISO 54, first series, and below 1 the sizes of small gears: cutters and stock gears are sold in these
    lever: {
      sizes: [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10],
      times: 3,
    },
    help: 'Size of the teeth: pitch diameter over number of teeth. Both wheels have the same.',
  },
  faceWidthMm: {
    label: 'Face width',
    section: 'Strength',
    kind: 'length',
    low: 0.5,
    high: 500,
    lever: { step: 1, times: 3 },
    help: 'How wide the two wheels overlap: the narrower one.',
  },
  pressureAngleDegrees: {
    label: 'Pressure angle',
    section: 'Strength',
    kind: 'angle',
    low: 14.5,
    high: 25,
    default: 20,
    help: 'Slant of the flanks; 20° for nearly all gears of today. Strength is figured for 20° teeth.',
  },
  driverMaterial: {
    ...fromMaterials,
    label: 'Driver’s material',
    section: 'Strength',
    lever: { choices: materialIds },
    help: 'What the wheel on the motor’s side is made of.',
  },
  drivenMaterial: {
    ...fromMaterials,
    label: 'Driven wheel’s material',
    section: 'Strength',
    lever: { choices: materialIds },
    help: 'What the wheel on the track’s side is made of.',
  },
  driverShift: {
    ...shift,
    label: 'Driver’s profile shift',
    help: 'In modules: teeth cut further out are thicker at the root. Pinions of few teeth need it.',
  },
  drivenShift: {
    ...shift,
    label: 'Driven wheel’s profile shift',
    help: 'In modules; minus that of the driver keeps the distance of the shafts.',
  },
  finish: {
    label: 'Finish of the teeth',
    section: 'Strength',
    kind: 'text',
    choices: [
      { value: 'cast', label: 'Cast or printed' },
      { value: 'milled', label: 'Milled' },
      { value: 'hobbed', label: 'Hobbed or shaped' },
      { value: 'ground', label: 'Ground or shaved' },
    ],
    default: 'milled',
    help: 'The rougher the teeth, the more speed adds to their load.',
  },
} as const satisfies Rows

export const gearEntries: StageKindEntries<typeof gearRows> = {
  label: 'Gears',
  short: 'Gears',
  offered: 0,
  rows: gearRows,
  start: (teeth) => ({
    ...teeth,
    moduleMm: 1,
    faceWidthMm: 10,
    driverMaterial: 'steel-c45',
    drivenMaterial: 'steel-c45',
  }),
  teethOf: (stage) => stage,
  pitchRadius: null,
  unrated: null,
}
