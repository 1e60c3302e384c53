import type { GroupNode, Rows, UnionNode } from '../rows/group.ts'

const model = {
  model: {
    label: 'How the ground is described',
    kind: 'text',
    choices: [
      { value: 'coefficient', label: 'By a pull test: rolling and grip' },
      { value: 'soil', label: 'By its soil or snow: sinking and shear' },
    ],
    help: 'A pull test suits firm ground and anything you can measure. The soil model suits soft ground and larger machines.',
  },
} as const satisfies Rows

const anyGround = {
  skiFriction: {
    label: 'Friction of skis',
    section: 'Place',
    rank: 1,
    kind: 'none',
    low: 0,
    high: 2,
    default: 0,
    help: 'Drag of what is not on the tracks over its share of the weight.',
  },
  gradePercent: {
    label: 'Grade',
    section: 'Place',
    kind: 'fraction',
    low: 0,
    high: 100,
    default: 0,
    help: 'Metres up for a hundred along the level: 100 % is 45°.',
    asks: {
      question: 'Is this a grade in percent, or an angle?',
      conventions: [
        { label: 'Percent', factor: 1 },
        {
          label: 'Degrees',
          factor: null,
          note: 'Percent are 100 times the tangent of the angle: 10° is 17.6 %, 20° is 36.4 %, 30° is 57.7 %.',
        },
      ],
    },
  },
  sideSlopePercent: {
    label: 'Side slope',
    section: 'Place',
    kind: 'fraction',
    low: 0,
    high: 200,
    default: 0,
    help: 'Steepest slope that it drives across: metres up for a hundred along the level.',
  },
  airTemperatureC: {
    label: 'Air temperature',
    section: 'Place',
    kind: 'temperature',
    low: -50,
    high: 60,
    default: 15,
    help: 'What cools motor, controller or radiator.',
  },
  altitudeM: {
    label: 'Altitude',
    section: 'Place',
    kind: 'distance',
    low: -400,
    high: 9000,
    default: 0,
    help: 'Thin air drags less.',
  },
  turnFriction: {
    label: 'Turning friction',
    section: 'Place',
    kind: 'none',
    low: 0.01,
    high: 3,
    optional: true,
    help: 'Sideways, of a loop that is dragged round. Turn the machine by hand with a scale on a long arm.',
    brings: 'Turning on the spot: the force and current that it takes, often the hardest case of all.',
  },
} as const satisfies Rows

const coefficient = {
  rollingCoefficient: {
    label: 'Rolling coefficient',
    kind: 'none',
    low: 0,
    high: 2,
    help: 'Force to keep it rolling over its weight. Pull it at a steady walk, motors off, both ways.',
  },
  gripCoefficient: {
    label: 'Grip coefficient',
    kind: 'none',
    low: 0.01,
    high: 3,
    help: 'Force at which the tracks slip over the weight on them. Pull against a scale until they do.',
  },
  slipPercent: {
    label: 'Slip',
    kind: 'fraction',
    low: 0,
    high: 80,
    default: 0,
    help: 'How much slower the machine goes than its belt while it still grips.',
  },
} as const satisfies Rows

const soil = {
  label: 'Soil or snow',
  entries: {
    n: {
      label: 'Sinkage exponent n',
      kind: 'none',
      low: 0.1,
      high: 3,
      help: 'How the ground stiffens as it is pressed down: about 0.5 for clay, 1.1 for dry sand, 1.5 for snow.',
    },
    kc: {
      label: 'Cohesive modulus k_c',
      kind: 'soilCohesiveModulus',
      low: -100,
      high: 1000,
      help: 'The part of the ground’s stiffness that a narrow track feels. Take it with the others from one terrain of the list.',
    },
    kphi: {
      label: 'Frictional modulus k_φ',
      kind: 'soilFrictionalModulus',
      low: 0.1,
      high: 100_000,
      help: 'The part of the ground’s stiffness that every track feels. Take it with the others from one terrain of the list.',
    },
    cohesionKpa: {
      label: 'Cohesion',
      kind: 'pressure',
      low: 0,
      high: 500,
      help: 'Shear strength without any weight on it: what makes clay stick together. Near 0 for dry sand.',
    },
    frictionDegrees: {
      label: 'Friction angle',
      kind: 'angle',
      low: 0,
      high: 60,
      help: 'How much strength weight adds: about the slope at which a heap of it stands.',
    },
    shearModulusMm: {
      label: 'Shear displacement K',
      kind: 'length',
      low: 0.5,
      high: 500,
      help: 'How far the ground has to be sheared before it gives most of its grip: 10 mm firm, 25 mm and more loose.',
    },
    snow: {
      label: 'It is snow',
      kind: 'none',
      flag: true,
      default: false,
      help: 'Snow crumbles: its strength under a track is held to what was measured at that pressure.',
    },
  },
} as const satisfies GroupNode

export const ground = {
  label: 'Ground',
  sections: ['', 'Place'],
  by: 'model',
  variants: {
    coefficient: { ...model, ...coefficient, ...anyGround },
    soil: { ...model, soil, ...anyGround },
  },
} as const satisfies UnionNode
