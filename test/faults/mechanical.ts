import { faultsOf, type Fault } from './fault.ts'

/** Reductions, track and teeth: radius for diameter, a lost service factor, the wrong wheel, the wrong row. */
export const mechanicalFaults: readonly Fault[] = [
  ...faultsOf(
    'stages/gear.ts',
    ['(2 * torque) / (stage.module * stage.driverTeeth)', 'torque / (stage.module * stage.driverTeeth)'],
    ['(speed * stage.module * stage.driverTeeth) / 2', '(speed * stage.module * stage.driverTeeth)'],
    ['(one + other) * sine) / (Math.PI * cosine)', '(one + other) * sine) / Math.PI'],
    ['(1 + 2 * ratio) * square', '(1 + ratio) * square'],
  ),
  ...faultsOf(
    'reference/gears.ts',
    ['(6.1 + speed) / 6.1', '6.1 / (6.1 + speed)'],
    ["lewis.Y, 'extend')", "lewis.Y, 'hold')"],
  ),
  ...faultsOf(
    'stages/belt.ts',
    ['(0.5 - beltLean(stage) / Math.PI)', '(0.5 + beltLean(stage) / Math.PI)'],
    ['- stage.massPerMetre * beltSpeed * beltSpeed', '+ stage.massPerMetre * beltSpeed * beltSpeed'],
    ['2 * centre * Math.cos(lean)', '2 * centre'],
  ),
  ...faultsOf(
    'build/machine-stage.ts',
    ['relativeWidth ** beltWidthExponent', 'relativeWidth'],
    ['size.massPerMetre * stage.strands', 'size.massPerMetre'],
  ),
  ...faultsOf(
    'stages/chain.ts',
    ['pitch / (2 * Math.sin(Math.PI / teeth))', '(pitch * teeth) / (2 * Math.PI)'],
    ['power(smaller, 1.08)', 'power(smaller, 1.5)'],
    [
      'const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)\n  const turns',
      'const smaller = Math.max(stage.driverTeeth, stage.drivenTeeth)\n  const turns',
    ],
    ['Math.sqrt(straight * straight - 8 * spread)', 'Math.sqrt(straight * straight - 4 * spread)'],
    ['2 * pitches + halfSum + spread / pitches', '2 * pitches + halfSum'],
    ['1 - Math.cos(Math.PI / Math.min(', '1 - Math.cos(Math.PI / Math.max('],
  ),
  ...faultsOf('stages/shaft.ts', ['(16 * torque)', '(32 * torque)']),
  ...faultsOf(
    'cases/stage-duty.ts',
    ['top *= stage.ratio * stage.efficiency', 'top *= stage.ratio'],
    ['let launch = machine.service.factor * launchTorque', 'let launch = launchTorque'],
    ['speed /= stage.ratio', 'speed *= stage.ratio'],
  ),
  ...faultsOf(
    'limits/stage.ts',
    ['stage.driverYield, name)', 'stage.drivenYield, name)'],
    ['const power = duty.topTorque * duty.topSpeed', 'const power = duty.launchTorque * duty.topSpeed'],
  ),
  ...faultsOf(
    'track/sharing.ts',
    ['4 * slenderness * slenderness * slenderness', '3 * slenderness * slenderness * slenderness'],
    [
      'const slack = slackTension + sharing.errorTension',
      'const slack = slackTension - sharing.errorTension',
    ],
    ['const most = 0.5 + ', 'const most = 1.5 + '],
    ['Math.max(firstRowForce(sharing), lastRowForce(sharing))', 'firstRowForce(sharing)'],
  ),
  ...faultsOf(
    'track/climb.ts',
    ['force / 2 + behind', 'force + behind'],
    ['(worst * slope * sprocketTeeth) / (2 * Math.PI)', '(worst * slope * sprocketTeeth) / Math.PI'],
  ),
  ...faultsOf(
    'track/teeth.ts',
    ['1 / (1 + share * (engaged - 1))', '1 / (1 + share * engaged)'],
    ['(6 * force * tooth.loadHeight)', '(6 * force * tooth.height)'],
    ['2 * (tooth.height - tooth.loadHeight)', 'tooth.height - tooth.loadHeight'],
  ),
  ...faultsOf(
    'track/tension.ts',
    ['track.breakingTension - track.pretension', 'track.breakingTension'],
    ['track.massPerMetre * beltSpeed * beltSpeed', '0.5 * track.massPerMetre * beltSpeed * beltSpeed'],
  ),
  ...faultsOf(
    'build/machine-track.ts',
    ['radius: advance / (2 * Math.PI)', 'radius: advance / Math.PI'],
    ['strengths.shear * knockdown', 'strengths.shear'],
  ),
  ...faultsOf('cases/track-loads.ts', [
    'load.tension = pull + slackTension',
    'load.tension = load.force + slackTension',
  ]),
  ...faultsOf('cases/track-step.ts', [
    '(e.footing.gripThrust + internalDragAt(track, 0)) / track.count',
    'e.footing.gripThrust / track.count',
  ]),
]
