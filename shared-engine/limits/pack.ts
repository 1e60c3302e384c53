import { defineLimits, setMaximum, setMinimum, type Limit } from './limit.ts'

/** Limits of the pack. Each `measure` is the row of the same id in engine contract §8. */
export const packLimits: readonly Limit[] = defineLimits([
  {
    id: 'pack.current-burst',
    label: 'Pack burst current',
    part: 'pack',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: ['pack.burstC'],
    measure: (out, e, machine) =>
      machine.pack.burstAmps !== null &&
      e.top.exists &&
      setMaximum(out, e.runPackAmps, machine.pack.burstAmps, 'run'),
  },
  {
    id: 'pack.current-continuous',
    label: 'Pack continuous current',
    part: 'pack',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: ['pack.continuousC'],
    measure: (out, e, machine) =>
      machine.pack.continuousAmps !== null &&
      e.top.exists &&
      setMaximum(
        out,
        machine.service.loadShare * e.top.packDriveAmps + e.accessoryAmps,
        machine.pack.continuousAmps,
        'top',
      ),
  },
  {
    id: 'pack.floor-voltage',
    label: 'Pack volts under load',
    part: 'pack',
    question: 'hot',
    sense: 'minimum',
    unit: 'V',
    kind: 'volts',
    needs: [],
    measure: (out, e, machine) =>
      e.top.exists && setMinimum(out, e.runPackVolts, machine.pack.floorVolts, 'run'),
  },
])
