import type { Condition, FieldTable } from './field.ts'

const byCoefficient: Condition = { entry: 'ground.model', among: ['coefficient'] }
const bySoil: Condition = { entry: 'ground.model', among: ['soil'] }

const modelFields = {
  'ground.model': {
    label: 'How the ground is described',
    kind: 'text',
    choices: [
      { value: 'coefficient', label: 'By a pull test: rolling and grip' },
      { value: 'soil', label: 'By its soil or snow: sinking and shear' },
    ],
    help: 'A pull test suits firm ground and anything you can measure. The soil model suits soft ground and larger machines.',
  },
  'ground.rollingCoefficient': {
    label: 'Rolling coefficient',
    kind: 'none',
    low: 0,
    high: 2,
    onlyWith: byCoefficient,
    help: 'Force to keep it rolling over its weight. Pull it at a steady walk, motors off, both ways.',
  },
  'ground.gripCoefficient': {
    label: 'Grip coefficient',
    kind: 'none',
    low: 0.01,
    high: 3,
    onlyWith: byCoefficient,
    help: 'Force at which the tracks slip over the weight on them. Pull against a scale until they do.',
  },
  'ground.slipPercent': {
    label: 'Slip',
    kind: 'fraction',
    low: 0,
    high: 80,
    default: 0,
    onlyWith: byCoefficient,
    help: 'How much slower the machine goes than its belt while it still grips.',
  },
  'ground.soil.n': {
    label: 'Sinkage exponent n',
    kind: 'none',
    low: 0.1,
    high: 3,
    onlyWith: bySoil,
    help: 'How the ground stiffens as it is pressed down: about 0.5 for clay, 1.1 for dry sand, 1.5 for snow.',
  },
  'ground.soil.kc': {
    label: 'Cohesive modulus k_c',
    kind: 'soilCohesiveModulus',
    low: -100,
    high: 1000,
    onlyWith: bySoil,
    help: 'The part of the ground’s stiffness that a narrow track feels. Take it with the others from one terrain of the list.',
  },
  'ground.soil.kphi': {
    label: 'Frictional modulus k_φ',
    kind: 'soilFrictionalModulus',
    low: 0.1,
    high: 100_000,
    onlyWith: bySoil,
    help: 'The part of the ground’s stiffness that every track feels. Take it with the others from one terrain of the list.',
  },
  'ground.soil.cohesionKpa': {
    label: 'Cohesion',
    kind: 'pressure',
    low: 0,
    high: 500,
    onlyWith: bySoil,
    help: 'Shear strength without any weight on it: what makes clay stick together. Near 0 for dry sand.',
  },
  'ground.soil.frictionDegrees': {
    label: 'Friction angle',
    kind: 'angle',
    low: 0,
    high: 60,
    onlyWith: bySoil,
    help: 'How much strength weight adds: about the slope at which a heap of it stands.',
  },
  'ground.soil.shearModulusMm': {
    label: 'Shear displacement K',
    kind: 'length',
    low: 0.5,
    high: 500,
    onlyWith: bySoil,
    help: 'How far the ground has to be sheared before it gives most of its grip: 10 mm firm, 25 mm and more loose.',
  },
} as const satisfies FieldTable

const anyGround = {
  'ground.skiFriction': {
    label: 'Friction of skis',
    kind: 'none',
    low: 0,
    high: 2,
    default: 0,
    help: 'Drag of what is not on the tracks over its share of the weight.',
  },
  'ground.gradePercent': {
    label: 'Grade',
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
  'ground.airTemperatureC': {
    label: 'Air temperature',
    kind: 'temperature',
    low: -50,
    high: 60,
    default: 15,
    help: 'What cools motor, controller or radiator.',
  },
  'ground.altitudeM': {
    label: 'Altitude',
    kind: 'distance',
    low: -400,
    high: 9000,
    default: 0,
    help: 'Thin air drags less.',
  },
  'ground.turnFriction': {
    label: 'Turning friction',
    kind: 'none',
    low: 0.01,
    high: 3,
    optional: true,
    help: 'Sideways, of a loop that is dragged round. Turn the machine by hand with a scale on a long arm.',
    brings: 'Turning on the spot: the force and current that it takes, often the hardest case of all.',
  },
} as const satisfies FieldTable

export const groundFields = { ...modelFields, ...anyGround }
