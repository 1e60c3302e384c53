import { rpmOf } from '../units/rpm.ts'
import { defineLimits, setMaximum, setTemperature, type Limit } from './limit.ts'

/** Limits of the controller. Each `measure` is the row of the same id in engine contract §8. */
export const controllerLimits: readonly Limit[] = defineLimits([
  {
    id: 'controller.electrical-rpm',
    label: 'Electrical rpm',
    part: 'controller',
    question: 'fast',
    sense: 'maximum',
    unit: 'rpm',
    kind: 'rpm',
    needs: ['controller.maxElectricalRpm'],
    measure: (out, e, machine) =>
      machine.controller.maxElectricalRpm !== null &&
      setMaximum(
        out,
        rpmOf(e.worstFreeSpeed) * machine.motor.polePairs,
        machine.controller.maxElectricalRpm,
        'free',
      ),
  },
  {
    id: 'controller.current-burst',
    label: 'Controller burst current',
    part: 'controller',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: ['controller.burstAmps'],
    measure: (out, e, machine) =>
      machine.controller.burstAmps !== null &&
      setMaximum(out, e.restAmps, machine.controller.burstAmps, 'rest'),
  },
  {
    id: 'controller.current-continuous',
    label: 'Controller continuous current',
    part: 'controller',
    question: 'hot',
    sense: 'maximum',
    unit: 'A',
    kind: 'amps',
    needs: ['controller.continuousAmps'],
    measure: (out, e, machine) =>
      machine.controller.continuousAmps !== null &&
      e.top.exists &&
      setMaximum(out, e.heat.amps, machine.controller.continuousAmps, 'top'),
  },
  {
    id: 'controller.temperature',
    label: 'Controller temperature',
    part: 'controller',
    question: 'hot',
    sense: 'temperature',
    unit: 'degC',
    kind: 'temperature',
    needs: ['controller.thermalResistanceKPerW', 'controller.maxTemperatureC'],
    measure: (out, e, machine) =>
      machine.controller.thermalResistance !== null &&
      machine.controller.maxTemperature !== null &&
      e.top.exists &&
      setTemperature(out, e.heat.controllerTemperature, machine.controller.maxTemperature, e.heat.sink),
  },
])
