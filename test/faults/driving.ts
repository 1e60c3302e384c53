import { faultsOf, type Fault } from './fault.ts'

/** Ground, vehicle, heat, energy, ledger: slope and level mixed, slip forgotten, a margin turned round. */
export const drivingFaults: readonly Fault[] = [
  ...faultsOf(
    'ground/footing.ts',
    ['heaviness * cosine', 'heaviness'],
    ['heaviness * sine', '0'],
    ['(footing.weight - footing.trackWeight)', 'footing.weight'],
    ['/ (soil.exponent + 1)', '/ soil.exponent'],
    ['power(pressure / modulus, 1 / soil.exponent)', 'power(pressure / modulus, soil.exponent)'],
    ['Math.min(length, width)', 'Math.max(length, width)'],
  ),
  ...faultsOf('ground/resistance.ts', ['0.5 * machine.ground.airDensity', 'machine.ground.airDensity']),
  ...faultsOf(
    'ground/soil-shear.ts',
    ['if (x > 0.1) return 1 - (1 - decayOf(x)) / x', 'if (x > 0.1) return 1 - decayOf(x)'],
    ['(missing - decay) * inverse', 'missing * inverse'],
  ),
  ...faultsOf(
    'machine/ground.ts',
    ['1 - pressureLapse * altitude', '1 + pressureLapse * altitude'],
    ['(temperature + zeroCelsius)', 'zeroCelsius'],
  ),
  ...faultsOf(
    'vehicle/thrust-line.ts',
    ['motor.count * train.efficiency * motorPerBelt', 'train.efficiency * motorPerBelt'],
    [
      'perAmp * (ampsPerSpeed + noLoadSlope) + track.internalDragPerSpeed',
      'perAmp * (ampsPerSpeed + noLoadSlope)',
    ],
  ),
  ...faultsOf(
    'vehicle/equilibrium.ts',
    [
      '(2 * surplus) / (slope + Math.sqrt(slope * slope + 4 * airDragFactor * surplus))',
      '(2 * surplus) / (slope + Math.sqrt(slope * slope + 2 * airDragFactor * surplus))',
    ],
    ['top.slip = 1 - speed / top.beltSpeed', 'top.slip = ground.slip'],
  ),
  ...faultsOf('vehicle/state-at-speed.ts', [
    '(state.thrust + internalDragAt(machine.track, state.beltSpeed))',
    'state.thrust',
  ]),
  ...faultsOf(
    'vehicle/inertia.ts',
    ['track.count * track.loopMass', '2 * track.count * track.loopMass'],
    ['train.inertiaAtMotor * motorPerBelt * motorPerBelt', 'train.inertiaAtMotor * motorPerBelt'],
  ),
  ...faultsOf('vehicle/run-piece.ts', ['metres += part * speed', 'metres += 0.5 * part * speed']),
  ...faultsOf(
    'vehicle/run.ts',
    [
      'continueRun(progress, machine, motion, 0.8 * top.groundSpeed)',
      'continueRun(progress, machine, motion, 0.9 * top.groundSpeed)',
    ],
    ['line.openSlope / gripping)', 'line.openSlope)'],
  ),
  ...faultsOf('vehicle/soil-motion.ts', ['- beltSpeed * footing.slipPerShear', '']),
  ...faultsOf(
    'vehicle/front-lift.ts',
    [
      'lifted.weight * centreAhead - towForce * towHeight',
      'lifted.weight * centreAhead + towForce * towHeight',
    ],
    ['+ towForce + lifted.groundResistance', '+ lifted.groundResistance'],
  ),
  ...faultsOf(
    'vehicle/pivot.ts',
    ['(4 * gauge)', '(2 * gauge)'],
    ['(2 * (thrust + machine.track.internalDrag / 2))', '(thrust + machine.track.internalDrag / 2)'],
  ),
  ...faultsOf(
    'vehicle/cruise.ts',
    ['groundSpeed / (1 - cruise.slip)', 'groundSpeed'],
    ['machine.pack.usable / cruise.packAmps', 'machine.pack.capacity / cruise.packAmps'],
  ),
  ...faultsOf('vehicle/logged-speed.ts', [
    '(rpm / secondsPerMinute) * (machine.track.advance / machine.train.ratio) * (1 - slip)',
    '(rpm / secondsPerMinute) * (machine.track.advance / machine.train.ratio)',
  ]),
  ...faultsOf('vehicle/slope.ts', [
    'setFooting(footing, machine, grade * cosine, cosine)',
    'setFooting(footing, machine, grade, cosine)',
  ]),
  ...faultsOf(
    'heat/two-nodes.ts',
    [
      '1 - copperTemperatureCoefficient * referenceTemperature',
      '1 + copperTemperatureCoefficient * referenceTemperature',
    ],
    ['const b = windingToCase / windingCapacity', 'const b = windingToCase / caseCapacity'],
  ),
  ...faultsOf('heat/node-times.ts', ['Math.log1p(share) / rate', 'share / rate']),
  ...faultsOf('heat/motor-cycle.ts', [
    'ww + step.ww + step.ww * ww + step.wc * cw',
    'ww + step.ww + step.ww * ww',
  ]),
  ...faultsOf(
    'heat/stream.ts',
    ['resistance * capacityRate))', 'resistance + capacityRate))'],
    ['** 0.8', '** 0.5'],
  ),
  ...faultsOf(
    'cases/pattern-heat.ts',
    ['1 / conductance - 1 / capacityRate', '1 / conductance'],
    ['(motor.count * heat.motorHeat) / capacityRate', 'heat.motorHeat / capacityRate'],
  ),
  ...faultsOf(
    'vehicle/pattern-row.ts',
    ['moment.motorTorque *= machine.train.efficiency * machine.train.efficiency', 'moment.motorTorque *= 1'],
    ['0.5 * state.straight.groundSpeed', 'state.straight.groundSpeed'],
  ),
  ...faultsOf('cases/bursts.ts', ['Math.min(restAmps, gripAmps)', 'restAmps']),
  ...faultsOf('vehicle/braking.ts', ['train.efficiency * train.efficiency', 'train.efficiency']),
  ...faultsOf(
    'cases/evaluate.ts',
    ['e.launchAmps = Math.min(e.stallAmps, drive.currentLimit)', 'e.launchAmps = e.stallAmps'],
    ['machine.pack.openVolts - e.topPackAmps * machine.pack.resistance', 'machine.pack.openVolts'],
  ),
  ...faultsOf(
    'limits/ledger.ts',
    ['actual > 0 ? 1 - allowed / actual', 'actual > 0 ? 1 - actual / allowed'],
    ['(allowed - actual) / (allowed - sink)', '(allowed - actual) / allowed'],
    ['return first < second ? -1 : 1', 'return first < second ? 1 : -1'],
  ),
  ...faultsOf('limits/limit.ts', ['withinMargin = 0.2', 'withinMargin = 0.25']),
]
