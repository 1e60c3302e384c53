import { materialIds } from '../../../reference/materials.ts'
import type { Rows } from '../../rows/group.ts'
import type { Row } from '../../rows/row.ts'
import { bearing } from '../bearing.ts'
import { joint } from '../joint.ts'
import { fromMaterials } from '../material.ts'
import { bendingRows } from '../shaft-bending.ts'

const teeth = { kind: 'count', counted: 'teeth', low: 4, high: 1000, whole: true } as const

/** Both wheels of a reduction that has teeth. */
export const wheelRows = {
  driverTeeth: {
    ...teeth,
    label: 'Driver’s teeth',
    // pinions, pulleys and chain wheels that are sold from stock
    lever: { step: 1, least: 9, most: 40, times: 3 },
    axis: { offered: 0, turns: 3 },
    help: 'Teeth of the wheel on the motor’s side.',
  },
  drivenTeeth: {
    ...teeth,
    label: 'Driven wheel’s teeth',
    lever: { step: 1, least: 12, most: 120, times: 3 },
    axis: { offered: 0, turns: 3 },
    help: 'Teeth of the wheel on the track’s side.',
  },
} as const satisfies Rows

/** What a reduction of any kind has. */
export const everyStage = {
  efficiencyPercent: {
    label: 'Efficiency',
    rank: 1,
    kind: 'fraction',
    low: 1,
    high: 100,
    defaultFrom: {
      says: '97 %, of a gearbox of a known ratio 90 %',
      of: (entries, group) => (entries.raw(`${group}.kind`) === 'fixed' ? 90 : 97),
    },
    help: 'Power that comes out of what goes in: 97 % for a clean pair, 90 % for two planetary steps; a worm takes far more.',
  },
  shaftDiameterMm: {
    label: 'Driven shaft’s diameter',
    section: 'Driven shaft',
    kind: 'length',
    low: 0.5,
    high: 300,
    optional: true,
    lever: { step: 0.5, times: 2 },
    help: 'At its thinnest section that carries the torque; less for a keyway or flat.',
    brings: 'The shaft’s limit, together with its material.',
  },
  shaftMaterial: {
    ...fromMaterials,
    label: 'Driven shaft’s material',
    section: 'Driven shaft',
    optional: true,
    lever: { choices: materialIds },
    help: 'What the shaft of the driven wheel is made of.',
    brings: 'The shaft’s limit, together with its diameter.',
  },
  drivenInertiaGcm2: {
    label: 'Driven inertia',
    section: 'Driven shaft',
    kind: 'inertia',
    low: 0,
    high: 1e7,
    default: 0,
    help: 'Of the driven wheel and its shaft; 0 leaves it out.',
  },
  shaftSpanMm: { ...bendingRows.span, section: 'Driven shaft' },
  shaftOverhangMm: { ...bendingRows.overhang, section: 'Driven shaft' },
  slipTorqueNm: {
    label: 'Torque limiter',
    section: 'Driven shaft',
    kind: 'torque',
    low: 0.01,
    high: 1e6,
    optional: true,
    lever: { step: 0.1, way: 'less' },
    help: 'Torque at which a slipping clutch between the driven wheel and its shaft gives way.',
    brings: 'What a slipping clutch spares the train, and whether it slips in ordinary use.',
  },
  joint,
  bearing,
} as const satisfies Rows

/** Asked of a belt; of a chain it may be left out. */
export const centreRow = {
  label: 'Distance of the shafts',
  section: 'Strength',
  kind: 'length',
  low: 5,
  high: 10_000,
  help: 'Between the middles of the two shafts.',
} as const satisfies Row
