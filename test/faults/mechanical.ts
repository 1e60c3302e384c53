import { faultsOf, type Fault } from './fault.ts'

/** Reductions, track and teeth: radius for diameter, a lost service factor, the wrong wheel, the wrong row. */
export const mechanicalFaults: readonly Fault[] = [
  ...faultsOf('stages/gear/machine.ts', ['(module * stage.driverTeeth) / 2', 'module * stage.driverTeeth']),
  ...faultsOf(
    'stages/gear/geometry.ts',
    ['(one + other) * sine) / (Math.PI * cosine)', '(one + other) * sine) / Math.PI'],
    ['(1 + 2 * ratio) * square', '(1 + ratio) * square'],
  ),
  ...faultsOf(
    'reference/gears.ts',
    ['(6.1 + speed) / 6.1', '6.1 / (6.1 + speed)'],
    ["lewis.Y, 'extend')", "lewis.Y, 'hold')"],
  ),
  ...faultsOf(
    'stages/belt/geometry.ts',
    ['(0.5 - beltLean(drive) / Math.PI)', '(0.5 + beltLean(drive) / Math.PI)'],
    ['2 * centre * Math.cos(lean)', '2 * centre'],
  ),
  ...faultsOf('stages/belt/physics.ts', [
    '- stage.massPerMetre * beltSpeed * beltSpeed',
    '+ stage.massPerMetre * beltSpeed * beltSpeed',
  ]),
  ...faultsOf('stages/belt/machine.ts', ['relativeWidth ** beltWidthExponent', 'relativeWidth']),
  ...faultsOf('stages/gear/machine.ts', [
    'drivenForm * drivenStrength < driverForm * driverStrength',
    'drivenForm > driverForm',
  ]),
  ...faultsOf(
    'stages/chain/machine.ts',
    ['size.massPerMetre * stage.strands', 'size.massPerMetre'],
    ['smaller ** 1.08', 'smaller ** 1.5'],
    [
      'const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)',
      'const smaller = Math.max(stage.driverTeeth, stage.drivenTeeth)',
    ],
  ),

  ...faultsOf('stages/chain/geometry.ts', [
    'pitch / (2 * Math.sin(Math.PI / teeth))',
    '(pitch * teeth) / (2 * Math.PI)',
  ]),
  ...faultsOf(
    'stages/chain/physics.ts',
    ['Math.sqrt(straight * straight - 8 * spread)', 'Math.sqrt(straight * straight - 4 * spread)'],
    ['2 * pitches + halfSum + spread / pitches', '2 * pitches + halfSum'],
    ['1 - Math.cos(Math.PI / Math.min(', '1 - Math.cos(Math.PI / Math.max('],
  ),
  ...faultsOf(
    'stages/shaft-strength.ts',
    ['const twisted = 16 * torque', 'const twisted = 32 * torque'],
    ['(2 * notch.bending * bending) / endurance', '(notch.bending * bending) / endurance'],
  ),
  ...faultsOf(
    'cases/train-duty.ts',
    ['efficiency *= stage.efficiency', 'efficiency *= 1'],
    ['factor * perPull * (launch[place] ?? NaN)', 'perPull * (launch[place] ?? NaN)'],
    ['duty.topSpeed = e.top.motorSpeed / ratio', 'duty.topSpeed = e.top.motorSpeed * ratio'],
    ['const loop = pull + 2 * pressing', 'const loop = pull + pressing'],
  ),
  ...faultsOf('cases/train-pulls.ts', [
    'needed /= stages[at]?.efficiency ?? 1',
    'needed *= stages[at]?.efficiency ?? 1',
  ]),
  ...faultsOf(
    'cases/jam.ts',
    ['scale * stage.drivenInertia * left * left', 'scale * stage.drivenInertia * left'],
    ['Math.min(slip, motorPull)', 'slip'],
  ),
  ...faultsOf(
    'stages/joint.ts',
    ['(keyHeight(diameter) / 2)', 'keyHeight(diameter)'],
    ['(diameter - depth)) / 3', '(diameter - depth)) / 2'],
  ),
  ...faultsOf('stages/chain/limits.ts', [
    'const watts = (duty.into[dutyCase.top] ?? NaN) * duty.topSpeed',
    'const watts = (duty.into[dutyCase.launch] ?? NaN) * duty.topSpeed',
  ]),
  ...faultsOf(
    'track/sharing.ts',
    [
      'const slack = slackTension + springs.errorTension',
      'const slack = slackTension - springs.errorTension',
    ],
    ['(ratios[rows] ?? NaN) * near', '(ratios[rows - 1] ?? NaN) * near'],
    ['Math.max(sharing.first, sharing.last)', 'sharing.first'],
  ),
  ...faultsOf(
    'track/climb.ts',
    ['force / 2 + behind', 'force + behind'],
    [
      '((worst / holding) * slope * sprocketTeeth) / fullTurn',
      '((worst / holding) * slope * sprocketTeeth) / Math.PI',
    ],
  ),
  ...faultsOf(
    'geometry/drive-tooth.ts',
    ['4 * slenderness * slenderness * slenderness', '3 * slenderness * slenderness * slenderness'],
    ['1 / (1 + share * (engaged - 1))', '1 / (1 + share * engaged)'],
  ),
  ...faultsOf(
    'track/teeth.ts',
    ['(6 * force * tooth.loadHeight)', '(6 * force * tooth.height)'],
    ['2 * (tooth.height - tooth.loadHeight)', 'tooth.height - tooth.loadHeight'],
  ),
  ...faultsOf('track/tension.ts', [
    'track.massPerMetre * beltSpeed * beltSpeed',
    '0.5 * track.massPerMetre * beltSpeed * beltSpeed',
  ]),
  ...faultsOf(
    'track/tensioner.ts',
    ['hold.pretension - hold.tightShare * pull - centrifugal', 'hold.pretension - centrifugal'],
    ["hold.tensioner === 'fixed' ? breaking : breaking - hold.pretension", 'breaking - hold.pretension'],
  ),
  ...faultsOf(
    'machine/track.ts',
    ['radius: advance / fullTurn', 'radius: (2 * advance) / fullTurn'],
    ['strengths.shear * knockdown', 'strengths.shear'],
  ),
  ...faultsOf('cases/track-loads.ts', [
    'load.tension = pull + load.slack',
    'load.tension = load.force + load.slack',
  ]),
  ...faultsOf('cases/track-step.ts', [
    '(e.mostGrip + internalDragAt(track, 0)) / track.count',
    'e.mostGrip / track.count',
  ]),
]
