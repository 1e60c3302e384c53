import { rpmOf } from '../units/rpm.ts'
import { defineLimits, setMaximum, setTemperature, type Limit } from './limit.ts'

/** Limits of the motor. Each `measure` is the row of the same id in engine contract §8. */
export const motorLimits: readonly Limit[] = defineLimits([
  {
    id: 'motor.free-rpm',
    label: 'Free-running rpm',
    part: 'motor',
    question: 'fast',
    sense: 'maximum',
    unit: 'rpm',
    kind: 'rpm',
    needs: [],
    measure: (out, e, machine) => setMaximum(out, rpmOf(e.worstFreeSpeed), machine.motor.ratedMaxRpm, 'free'),
  },
  {
    id: 'motor.loaded-rpm',
    label: 'Rpm at top speed',
    part: 'motor',
    question: 'fast',
    sense: 'maximum',
    unit: 'rpm',
    kind: 'rpm',
    needs: [],
    measure: (out, e, machine) =>
      e.top.exists && setMaximum(out, rpmOf(e.top.motorSpeed), machine.motor.ratedMaxRpm, 'top'),
  },
  {
    id: 'motor.current-burst',
    label: 'Motor burst current',
    part: 'motor',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: ['motor.burstAmps'],
    measure: (out, e, machine) =>
      machine.motor.burstAmps !== null && setMaximum(out, e.restAmps, machine.motor.burstAmps, 'rest'),
  },
  {
    id: 'motor.current-continuous',
    label: 'Motor continuous current',
    part: 'motor',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: ['motor.continuousAmps'],
    measure: (out, e, machine) =>
      machine.motor.continuousAmps !== null &&
      e.top.exists &&
      setMaximum(out, e.heat.amps, machine.motor.continuousAmps, 'top'),
  },
  {
    id: 'motor.temperature',
    label: 'Motor temperature',
    part: 'motor',
    question: 'hot',
    sense: 'temperature',
    unit: 'degC',
    kind: 'temperature',
    needs: ['motor.thermalResistanceKPerW'],
    measure: (out, e, machine) =>
      machine.motor.thermalResistance !== null &&
      e.top.exists &&
      setTemperature(out, e.heat.motorTemperature, machine.motor.maxTemperature, e.heat.sink),
  },
])
