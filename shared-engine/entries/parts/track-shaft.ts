import { materialIds } from '../../reference/materials.ts'
import type { GroupNode } from '../rows/group.ts'
import { bearing } from './bearing.ts'
import { joint } from './joint.ts'
import { fromMaterials } from './material.ts'
import { bendingRows } from './shaft-bending.ts'

/** The shaft that carries the drive sprocket. */
export const trackShaft = {
  label: 'Sprocket shaft',
  whenAbsent: 'none',
  brings: 'Whether the sprocket’s shaft, its joint and its bearings hold: once, for good, and in a jam.',
  entries: {
    diameterMm: {
      label: 'Diameter of the sprocket shaft',
      section: 'Sprocket shaft',
      kind: 'length',
      low: 0.5,
      high: 300,
      lever: { step: 0.5, times: 2 },
      help: 'At its thinnest section that carries the torque.',
    },
    material: {
      ...fromMaterials,
      label: 'Material of the sprocket shaft',
      section: 'Sprocket shaft',
      lever: { choices: materialIds },
      help: 'What the shaft of the drive sprocket is made of.',
    },
    spanMm: { ...bendingRows.span, section: 'Sprocket shaft' },
    overhangMm: { ...bendingRows.overhang, section: 'Sprocket shaft' },
    joint,
    bearing,
  },
} as const satisfies GroupNode
