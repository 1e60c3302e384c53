import { faultsOf, type Fault } from './fault.ts'

/** Pack, motor and controller: signs, factors, the hot for the cold, one motor for all. */
export const electricFaults: readonly Fault[] = [
  ...faultsOf('pack/accessories.ts', ['4 * resistance * power', '2 * resistance * power']),
  ...faultsOf(
    'machine/machine.ts',
    ['(pack.series * cellResistance) / pack.parallel', '(pack.series * cellResistance) / pack.series'],
    ['(charge - reserve) * coldCapacityShare', 'charge * coldCapacityShare'],
    ["torqueConstantOf(si('kvRpmPerVolt'))", "torqueConstantOf(2 * si('kvRpmPerVolt'))"],
    ["si('noLoadVolts') - si('noLoadAmps') * resistance", "si('noLoadVolts')"],
    ['stage.drivenInertia / (ratio * ratio)', 'stage.drivenInertia / ratio'],
    ['polePairs: motor.poleCount / 2', 'polePairs: motor.poleCount'],
  ),
  ...faultsOf(
    'motor/constants.ts',
    ['1 + motor.fluxCoefficient', '1 - motor.fluxCoefficient'],
    ['(1 + copperTemperatureCoefficient * (temperature - referenceTemperature))', '1'],
  ),
  ...faultsOf('constants.ts', ['value: 0.00393', 'value: 0.0039'], ['value: 0.577', 'value: 0.5']),
  ...faultsOf(
    'motor/drive-line.ts',
    ['motor.count * duty * duty * packResistance', 'duty * duty * packResistance'],
    [
      'line.seriesResistance = line.motorResistance + controller.resistance',
      'line.seriesResistance = line.motorResistance',
    ],
    ['motor.noLoadAmps * (1 - motor.viscousShare)', 'motor.noLoadAmps'],
    ['4 * line.count * amps', '4 * amps'],
    ['(2 * needed) / (line.volts + Math.sqrt(inside))', '(2 * needed) / (line.volts - Math.sqrt(inside))'],
    ['ampsAt(line, speed) - noLoadAmpsAt(line, speed)', 'ampsAt(line, speed)'],
    ['if (speed < line.cornerSpeed) return line.currentLimit', ''],
  ),
  ...faultsOf(
    'motor/free-speed.ts',
    ['const held = duty * volts - ', 'const held = duty * volts + '],
    ['machine.motor.maxTemperature)', 'referenceTemperature)'],
    [
      'freeSpeedAt(machine, pack.fullVolts, motor.maxTemperature',
      'freeSpeedAt(machine, pack.openVolts, motor.maxTemperature',
    ],
  ),
  ...faultsOf('motor/standstill.ts', [
    'Math.sqrt(line.seriesResistance / (line.count',
    'Math.sqrt(line.seriesResistance / (2 * line.count',
  ]),
  ...faultsOf('motor/best-points.ts', ['amps * amps * line.motorResistance', 'amps * line.motorResistance']),
  ...faultsOf(
    'motor/bus-ripple.ts',
    ['((duty * (1 - duty)) / (frequency', '(duty / (frequency'],
    ['Math.sqrt(duty * (1 - duty))', '(duty * (1 - duty))'],
  ),
  ...faultsOf('geometry/wire.ts', ['(36 - gauge)', '(35 - gauge)'], ['/ (area * parallel)', '/ area']),
  ...faultsOf(
    'heat/wire.ts',
    ['0.21 / outside ** 0.6', '0.21 / outside ** 0.5'],
    ['miss / (1.25 * given * quarter - growth)', 'miss / (1.25 * given * quarter)'],
    ['heatGivenBy(outside) * rise ** 1.25', 'heatGivenBy(outside) * rise'],
    ['Math.exp(seconds * density * density)', 'Math.exp(seconds * density)'],
    ['(234 + start)', '(234 - start)'],
  ),
  ...faultsOf('pack/step-down.ts', ['(volts * peakAmps) / amps', 'volts']),
  ...faultsOf('motor/bus-ripple.ts', ['(9 * depth) / 16', '(9 * depth) / 8']),
]
