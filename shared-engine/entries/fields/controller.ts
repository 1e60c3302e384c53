import type { Ask, FieldTable } from './field.ts'

/** Labels rarely say which; taking one for the other hides the heat of part throttle. */
export const motorOrPackAmps = {
  question: 'Are these amps in the motor leads or in the pack leads?',
  conventions: [
    { label: 'Motor leads', factor: 1 },
    {
      label: 'Pack leads',
      factor: null,
      note: 'No factor turns one into the other: at part throttle the motor carries more than the pack gives. Find the rating of the motor side, or log it.',
    },
  ],
} as const satisfies Ask

export const controllerFields = {
  'controller.resistanceMilliohm': {
    label: 'On-resistance',
    kind: 'ohms',
    low: 0,
    high: 100,
    default: 0,
    help: 'Of the two switches that conduct at a time, from the data sheet of the switches. 0 leaves their loss out.',
    asks: {
      question: 'Is this for both conducting switches or for one?',
      conventions: [
        { label: 'Both', factor: 1 },
        { label: 'One switch', factor: 2 },
      ],
    },
  },
  'controller.continuousAmps': {
    label: 'Continuous current',
    kind: 'amps',
    low: 1,
    high: 2000,
    optional: true,
    help: 'What the label allows for long, in one motor’s leads.',
    brings: 'The limit on the controller’s continuous current.',
    asks: motorOrPackAmps,
  },
  'controller.burstAmps': {
    label: 'Burst current',
    kind: 'amps',
    low: 1,
    high: 2000,
    optional: true,
    help: 'What the label allows for seconds, in one motor’s leads.',
    brings: 'The limit on the controller’s greatest current.',
    asks: motorOrPackAmps,
  },
  'controller.currentLimitAmps': {
    label: 'Current limit',
    kind: 'amps',
    low: 1,
    high: 3000,
    optional: true,
    help: 'The motor current at which the controller holds back, or the most that a log has shown.',
    brings:
      'A realistic pull at standstill: without it only resistance limits the current, which is far too high for most motors.',
    asks: motorOrPackAmps,
  },
  'controller.maxElectricalRpm': {
    label: 'Fastest electrical speed',
    kind: 'rpm',
    low: 1000,
    high: 2_000_000,
    optional: true,
    help: 'How fast it can switch: mechanical rpm times pole pairs. Often given for a motor with two poles.',
    brings: 'The limit on electrical rpm.',
    asks: {
      question: 'Is this electrical rpm, or the rpm of a shaft?',
      conventions: [
        { label: 'Electrical, or of a two-pole motor', factor: 1 },
        { label: 'Of the shaft of this motor', factor: 'polePairs' },
      ],
    },
  },
  'controller.heatCapacityJPerK': {
    label: 'Heat capacity',
    kind: 'heatCapacity',
    low: 0.1,
    high: 1e6,
    optional: true,
    help: 'Heat that warms the controller by one degree; about 900 J/K for each kilogram of aluminium.',
    brings: 'How the controller warms over a drive pattern.',
  },
  'controller.thermalResistanceKPerW': {
    label: 'Thermal resistance',
    kind: 'thermalResistance',
    low: 0.001,
    high: 1000,
    optional: true,
    help: 'How many degrees above air or coolant each watt of loss brings. Fit it from one heat-up.',
    brings: 'The controller’s steady temperature.',
  },
  'controller.maxTemperatureC': {
    label: 'Hottest allowed',
    kind: 'temperature',
    low: 40,
    high: 200,
    optional: true,
    help: 'Where it cuts back or you want it to stop.',
    brings: 'The limit on the controller’s temperature, once its thermal resistance is known.',
  },
  'controller.pwmKhz': {
    label: 'Switching frequency',
    kind: 'frequency',
    low: 1,
    high: 200,
    optional: true,
    help: 'How often it switches in a second, from its settings.',
    brings: 'The ripple on the supply, together with the capacitance.',
  },
  'controller.busCapacitanceMicrofarad': {
    label: 'Capacitance at the input',
    kind: 'capacitance',
    low: 1,
    high: 200_000,
    optional: true,
    help: 'All capacitors across the controller’s supply together.',
    brings: 'The ripple on the supply, together with the switching frequency.',
  },
  'controller.throttleCapPercent': {
    label: 'Most throttle',
    kind: 'fraction',
    low: 1,
    high: 100,
    default: 100,
    help: 'The most that the driver’s transmitter is set to allow.',
  },
} as const satisfies FieldTable
