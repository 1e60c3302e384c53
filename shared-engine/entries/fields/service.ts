import type { FieldTable } from './field.ts'

const coolingFields = {
  'cooling.kind': {
    label: 'Cooling',
    kind: 'text',
    choices: [{ value: 'liquid', label: 'Liquid, one circuit' }],
    help: 'Motor and controller in one liquid circuit. Without the group, air cools both.',
  },
  'cooling.flowLPerMin': {
    label: 'Flow',
    kind: 'flow',
    low: 0.01,
    high: 1000,
    help: 'Through the circuit as built: fill a bucket. A pump’s label says what it moves with no hose on it.',
  },
  'cooling.coolant': {
    label: 'Coolant',
    kind: 'text',
    choices: [
      { value: 'water', label: 'Water' },
      { value: 'glycol30', label: 'Water with 30 % glycol' },
      { value: 'glycol50', label: 'Water with 50 % glycol' },
    ],
    fromTable: true,
    help: 'Glycol keeps it from freezing and carries a little less heat.',
  },
  'cooling.radiatorWPerK': {
    label: 'Radiator',
    kind: 'thermalConductance',
    low: 0.1,
    high: 10_000,
    help: 'Watts that it sheds for each degree that the coolant is warmer than the air.',
  },
} as const satisfies FieldTable

const accessoryFields = {
  'accessories.*.name': {
    label: 'Name',
    kind: 'text',
    longest: 120,
    help: 'What it is: lamps, a pump, a winch.',
  },
  'accessories.*.watts': {
    label: 'Power',
    kind: 'watts',
    low: 0,
    high: 20_000,
    help: 'What it draws while the machine runs.',
  },
  'accessories.*.volts': {
    label: 'Voltage',
    kind: 'volts',
    low: 1,
    high: 400,
    optional: true,
    help: 'What its converter makes of the pack’s voltage.',
    brings: 'The limit on its converter, together with the converter’s rating.',
  },
  'accessories.*.converterEfficiencyPercent': {
    label: 'Efficiency of its converter',
    kind: 'fraction',
    low: 10,
    high: 100,
    default: 100,
    help: 'Power out of it over power into it; 100 where it runs straight from the pack.',
  },
  'accessories.*.converterAmps': {
    label: 'Converter’s rating',
    kind: 'amps',
    low: 0.1,
    high: 500,
    optional: true,
    help: 'The most that the converter gives at its output.',
    brings: 'The limit on its converter, together with the voltage.',
  },
} as const satisfies FieldTable

const serviceFields = {
  'service.factor': {
    label: 'Factor for shock',
    kind: 'none',
    low: 1,
    high: 5,
    default: 1.5,
    help: 'Multiplies every static load on teeth, shafts, belts and chains. 1 is a laboratory, 2 and more rough ground.',
  },
  'service.windingTemperatureC': {
    label: 'Motor’s running temperature',
    kind: 'temperature',
    low: -40,
    high: 200,
    default: 60,
    help: 'Of winding and magnets, for the figures of a machine that has been running for a while.',
  },
  'service.loadPercent': {
    label: 'Load over a run',
    kind: 'fraction',
    low: 1,
    high: 100,
    default: 60,
    help: 'RMS current of a whole run as a share of the current at top speed. A log tells it.',
  },
  'service.packTemperatureC': {
    label: 'Pack temperature',
    kind: 'temperature',
    low: -40,
    high: 70,
    default: 20,
    help: 'A cold pack sags: at 0 °C its cells have about twice the resistance. Never charge a frozen pack.',
  },
  'service.stateOfChargePercent': {
    label: 'Charge',
    kind: 'fraction',
    low: 1,
    high: 100,
    default: 100,
    help: 'How full the pack is for the running figures.',
  },
  'service.reservePercent': {
    label: 'Reserve',
    kind: 'fraction',
    low: 0,
    high: 90,
    default: 20,
    help: 'Charge that stays in the pack, to come home and to keep the cells well.',
  },
} as const satisfies FieldTable

export const surroundingFields = { ...coolingFields, ...accessoryFields, ...serviceFields }
