import { faultsOf, type Fault } from './fault.ts'

/** Faults of one file that one test file is there to notice. */
const noticedIn = (test: string, file: string, ...pairs: Parameters<typeof faultsOf>[1][]): Fault[] =>
  faultsOf(file, ...pairs).map((fault) => ({ ...fault, noticedIn: `test/engine/${test}.test.ts` }))

/** What stands above the physics: search, uncertainty, remedy, sweep, compare, alarms, drawing. */
export const roomFaults: readonly Fault[] = [
  ...noticedIn(
    'search/pareto',
    'search/pareto.ts',
    ['other(place) < lowest ||', 'other(place) <= lowest ||'],
    ['one(a) - one(b) || other(a) - other(b)', 'one(a) - one(b) || other(b) - other(a)'],
  ),
  ...noticedIn('uncertainty/uncertainty', 'uncertainty/band.ts', [
    '(sorted.length - 1) * p',
    '(sorted.length - 1) * (1 - p)',
  ]),
  ...faultsOf('uncertainty/band.ts', [
    'probabilityOver: over / possible',
    'probabilityOver: over / sorted.length',
  ]),
  ...noticedIn(
    'remedy/remedy',
    'remedy/solve.ts',
    ['sign > 0 ? Math.ceil(count - 1e-5)', 'sign > 0 ? Math.floor(count - 1e-5)'],
    ['if ((measures[last] ?? NaN) >= target) {', 'if ((measures[last] ?? NaN) <= target) {'],
  ),
  ...noticedIn('sweep/sweep', 'sweep/crossings.ts', [
    'if (over.has(id) === goesOver) high = middle',
    'if (over.has(id) !== goesOver) high = middle',
  ]),
  ...noticedIn('compare/compare', 'compare/compare.ts', [
    'const by = value - first',
    'const by = first - value',
  ]),
  ...faultsOf('compare/compare.ts', ['(row.margin ?? -Infinity)', '(row.margin ?? Infinity)']),
  ...noticedIn(
    'alarms/alarms',
    'alarms/guard.ts',
    [
      'Math.min(...candidates.map(({ rpm, share }) => rpm * share))',
      'Math.max(...candidates.map(({ rpm, share }) => rpm * share))',
    ],
    ['electrical / motor.polePairs', 'electrical * motor.polePairs'],
  ),
  ...noticedIn('draw/thin', 'draw/thin.ts', [
    'if (y > (ys[greatest] ?? 0)) greatest = index',
    'if (y > (ys[greatest] ?? 0)) greatest = from',
  ]),
  ...noticedIn('report/sheet', 'report/entries.ts', [
    'if (origin !== undefined) return originWords[origin]',
    "if (origin !== undefined) return ''",
  ]),
  ...noticedIn('report/sheet', 'report/style.ts', [
    '@page { size: ${paperWords[paper]}',
    '@page { size: ${paperWords.letter}',
  ]),
  ...noticedIn('log/series', 'log/extremes.ts', ['high - low <= 2 * fan', 'high - low <= 1e9']),
  ...faultsOf(
    'drive/driving.ts',
    ['torque < 0 ? force / (machine.train.efficiency * machine.train.efficiency) : force', 'force'],
    ['(moment.force - gripThrust) / model.rotorMass', '(moment.force - gripThrust) / row.drivenMass'],
    [
      '(gripThrust - moment.resistance) / row.ground.mass',
      '(gripThrust - moment.resistance) / row.drivenMass',
    ],
  ),
  ...faultsOf(
    'drive/holding.ts',
    ['force < 0 ? -share * brakeAmpsAt', 'force < 0 ? -brakeAmpsAt'],
    ['moment.brakeForce = Math.max(0, moment.force - force)', 'moment.brakeForce = 0'],
  ),
  ...faultsOf('drive/turning.ts', ['moment.speed / 2', 'moment.speed']),
  ...faultsOf(
    'drive/heat-flow.ts',
    ['(count * fromMotor) / capacityRate', 'fromMotor / capacityRate'],
    ['(made.cells - fromPack) / heat.pack.capacity', 'made.cells / heat.pack.capacity'],
  ),
  ...faultsOf('drive/phase.ts', [
    "if (carried) return 'spinning'",
    "if (carried && atRest) return 'spinning'",
  ]),
]
