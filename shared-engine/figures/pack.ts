import type { Figure } from './figure.ts'

/** Pack, accessories and bus. */
export const packFigures = [
  {
    name: 'packOhm',
    label: 'Pack resistance',
    kind: 'ohms',
    value: (_e, machine) => machine.pack.resistance,
  },
  {
    name: 'packOpenVolts',
    label: 'Pack volts at rest',
    kind: 'volts',
    value: (_e, machine) => machine.pack.openVolts,
  },
  { name: 'accessoryAmps', label: 'Accessory current', kind: 'amps', value: (e) => e.accessoryAmps },
  { name: 'busRippleVolts', label: 'Bus ripple', kind: 'volts', value: (e) => e.busRipple },
] as const satisfies readonly Figure[]
