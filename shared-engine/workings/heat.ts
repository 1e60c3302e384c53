import type { TimeToLimit } from '../cases/heat-times.ts'
import type { Evaluated } from '../figures/evaluated.ts'
import { knowsSwitching } from '../motor/controller-loss.ts'
import type { Draft } from './draft.ts'
import { sprocketRadius } from './circuit.ts'
import { patternAmps, patternIron } from './pattern.ts'
import { steadyRows } from './pattern-rows.ts'
import { firstOf, inCase, needing, type Missing, type Subject } from './subject.ts'

const balance = 'heat balance of winding and case to their sink; IEC 60028 for the copper'
const ironInCase = 'Iron loss warms the case, copper loss the winding.'

/** The way to the sink is not entered. */
export function motorHeatNeeds(checked: Evaluated): Missing | null {
  return checked.evaluation.heat.hasMotor ? null : needing('motor.thermalResistanceKPerW')(checked)
}

/** The loss grows faster with heat than the heat leaves. */
export function runaway({ evaluation }: Evaluated): Missing | null {
  if (!evaluation.heat.runaway) return null
  return {
    why: 'thermal runaway: the loss grows faster with heat than the heat leaves, so there is no steady temperature.',
    show: (d) => patternAmps(d),
  }
}

/** `R_th`, or `R_wc` and `R_cs`; the capacities where they play a part. */
export function ownWay(d: Draft): void {
  const { heat } = d.checked.evaluation
  if (heat.nodes.two) {
    d.entry('R_wc', 'motor.windingToCaseKPerW')
    d.entry('R_cs', 'motor.caseToSinkKPerW')
    if (!heat.hasCapacities) return
    d.entry('C_w', 'motor.windingHeatCapacityJPerK')
    d.entry('C_c', 'motor.caseHeatCapacityJPerK')
    return
  }
  d.entry('R_th', 'motor.thermalResistanceKPerW')
  if (heat.hasCapacities) d.entry('C', 'motor.heatCapacityJPerK')
}

/** What warms the motor and how its heat leaves. */
function motorHeat(d: Draft): void {
  const { evaluation, machine } = d.checked
  const { heat } = evaluation
  d.assume(ironInCase)
  patternAmps(d)
  patternIron(d)
  d.entry('R_20', 'motor.resistanceMilliohm')
  d.constant('alpha_cu', 'copperTemperatureCoefficient')
  ownWay(d)
  if (machine.cooling !== null) {
    d.entry('V_f', 'cooling.flowLPerMin')
    const told = ['thermalResistance', 'to the coolant at the inlet'] as const
    d.found('R_i', told, 'the coolant warms on its way: more at less V_f', heat.toInlet)
  }
  sink(d)
}

/** `T_s`: what cools the motor. */
export function sink(d: Draft): void {
  const { machine, evaluation } = d.checked
  if (machine.cooling === null) {
    d.entry('T_air', 'ground.airTemperatureC')
    d.step('T_s', ['temperature', 'air that cools it'], 'T_air')
    return
  }
  d.entry('T_air', 'ground.airTemperatureC')
  d.entry('UA', 'cooling.radiatorWPerK')
  d.entry('V_f', 'cooling.flowLPerMin')
  if (machine.cooling.airCapacity !== null) d.entry('C_a', 'cooling.airWPerK')
  if (evaluation.heat.hasMotor) ownWay(d)
  d.figure('P_cu', 'patternCopperWatts')
  d.figure('P_fem', 'patternIronWatts')
  d.figure('Q_e', 'controllerLossWatts')
  d.found('T_s', ['temperature', 'coolant that feeds the motors'], feedWords(d.checked), evaluation.heat.feed)
}

/** What gives the coolant's temperature, with its symbols. */
const feedWords = ({ evaluation, machine }: Evaluated): string => {
  const { heat } = evaluation
  const air = machine.cooling?.airCapacity === null ? 'UA' : 'UA and C_a'
  const stored = heat.nodes.two ? 'R_wc, R_cs, C_w and C_c' : 'R_th and C'
  const plain = heat.nodes.two ? 'R_wc and R_cs' : 'R_th'
  const way = heat.hasMotor ? `, behind ${heat.hasCapacities ? stored : plain}` : ''
  return `T_air and what the heat of motors (P_cu, P_fem${way}) and controllers (Q_e) adds: q (1/K − 1/ρV_f c), K the radiator’s, of V_f and ${air}`
}
/** What is solved, with the symbols that stand for what is put in. */
const solvedWords = ({ evaluation, machine }: Evaluated, how: string): string => {
  const { two } = evaluation.heat.nodes
  const between = two ? '; from winding to case through R_wc' : ''
  const own = two ? 'R_cs' : 'R_th'
  const way =
    machine.cooling === null ? `through ${own} to T_s` : `through ${own}, from the inlet R_i, to T_s`
  const capacities = two ? ', into C_w and C_c' : ', into C'
  const stored = evaluation.heat.hasCapacities ? capacities : ''
  return `${how}: copper I_r^2 R_20 (1 + alpha_cu (T − 20)) and iron P_fe${stored}${between}, ${way}`
}
const endWords =
  'the pattern repeated until every round is like the one before, each row solved exactly, at the row’s end where the hotter of winding and case is hottest'

const hottest = (
  title: string,
  name: string,
  of: (checked: Evaluated) => number,
  missing: (checked: Evaluated) => Missing | null = () => null,
): Subject => ({
  title,
  state: inCase('pattern'),
  source: balance,
  assumptions: [steadyRows],
  missing: firstOf(motorHeatNeeds, missing, runaway),
  write: (d) => {
    motorHeat(d)
    const { heat } = d.checked.evaluation
    const words = solvedWords(d.checked, heat.hasCapacities ? endWords : 'steady at the means')
    d.found('T', ['temperature', name], words, of(d.checked))
  },
})

function oneNode(checked: Evaluated): Missing | null {
  if (checked.evaluation.heat.nodes.two) return null
  return needing('motor.windingToCaseKPerW', 'motor.caseToSinkKPerW')(checked)
}

/** The heat capacities are not entered. */
export function capacities(checked: Evaluated): Missing | null {
  const { heat } = checked.evaluation
  if (heat.hasCapacities) return null
  return heat.nodes.two
    ? needing('motor.windingHeatCapacityJPerK', 'motor.caseHeatCapacityJPerK')(checked)
    : needing('motor.heatCapacityJPerK')(checked)
}

const neverThere = (of: (checked: Evaluated) => number) => (checked: Evaluated) =>
  Number.isNaN(of(checked)) ? { why: 'the motor never gets so hot: it settles below its limit.' } : null

const loads = {
  hold: ['holding it on the slope', 'hold'],
  launch: ['jammed or starting at what the ground lets happen', 'launch'],
  pivot: ['in a pivot turn', 'pivot'],
} as const

/** The symbols of {@link ownWay}. */
export const wayWords = ({ evaluation }: Evaluated): string =>
  evaluation.heat.nodes.two ? 'C_w, R_wc, C_c and R_cs' : 'C and R_th'

const coldWords = (checked: Evaluated): string => {
  const stream = checked.machine.cooling === null ? '' : ', from the inlet of V_f'
  const way = `${wayWords(checked)}${stream}`
  return `when the winding, from T_air on with copper I^2 R_20 (1 + alpha_cu (T − 20)) alone, behind ${way}, is at T_max`
}

const timesOf = ({ evaluation }: Evaluated, load: keyof typeof loads): TimeToLimit => evaluation.times[load]

/** Steps of a time to the limit from a cold start. */
function coldStart(d: Draft, load: keyof typeof loads): void {
  const { evaluation } = d.checked
  d.entry('T_air', 'ground.airTemperatureC')
  d.entry('T_max', 'motor.maxTemperatureC')
  d.entry('R_20', 'motor.resistanceMilliohm')
  d.constant('alpha_cu', 'copperTemperatureCoefficient')
  ownWay(d)
  if (d.checked.machine.cooling !== null) d.entry('V_f', 'cooling.flowLPerMin')
  const figure = { hold: 'holdMotorAmps', launch: 'burstMotorAmps', pivot: 'pivotMotorAmps' } as const
  d.figure('I_s', figure[load])
  d.figure('F_max', 'gripThrustN')
  const words =
    'as I_s and F_max ask for it, with magnets as hot as T_max, at most the most standstill current'
  d.found('I', ['amps', `current of one motor, ${loads[load][0]}`], words, evaluation.times[load].amps)
}

/** A pivot turn that this machine can't make. */
function noSuchLoad(load: keyof typeof loads) {
  return (checked: Evaluated): Missing | null =>
    load === 'pivot' && Number.isNaN(timesOf(checked, load).amps)
      ? { why: 'it does not turn on the spot, or what that takes is not entered.' }
      : null
}

const needsOfTimes = firstOf(motorHeatNeeds, capacities)
const fromCold =
  'C dT/dt = losses less heat to the next node, two linear equations, solved; the time is a root'

const secondsTo = (load: keyof typeof loads): Subject => ({
  title: `How long the motor takes from the air’s temperature to its limit, ${loads[load][0]}.`,
  state: 'from cold, at rest, no iron loss',
  source: `${fromCold}; IEC 60028 for the copper`,
  missing: firstOf(
    needsOfTimes,
    noSuchLoad(load),
    neverThere((checked) => timesOf(checked, load).seconds),
  ),
  write: (d) => {
    coldStart(d, load)
    d.found('t', ['duration', 'time to the limit'], coldWords(d.checked), timesOf(d.checked, load).seconds)
  },
})

const caseAt = (load: keyof typeof loads): Subject => ({
  title: `What the case has when the motor is at its limit, ${loads[load][0]}: what a sensor on it shows.`,
  state: 'from cold, at rest, no iron loss',
  source: fromCold,
  missing: firstOf(
    needsOfTimes,
    oneNode,
    noSuchLoad(load),
    neverThere((checked) => timesOf(checked, load).seconds),
  ),
  write: (d) => {
    coldStart(d, load)
    d.found(
      'T_c',
      ['temperature', 'case then'],
      `the case ${coldWords(d.checked)}`,
      timesOf(d.checked, load).case,
    )
  },
})

const secondsToMotorLimit: Subject = {
  title: 'How long the pattern’s mean load takes from the temperature of what cools the motor to its limit.',
  state: inCase('pattern'),
  source: `${fromCold}; IEC 60028 for the copper`,
  missing: firstOf(
    needsOfTimes,
    ({ evaluation }) => (Number.isNaN(evaluation.heat.feed) ? runaway({ evaluation } as Evaluated) : null),
    neverThere(({ evaluation }) => evaluation.times.secondsToLimit),
  ),
  write: (d) => {
    motorHeat(d)
    d.entry('T_max', 'motor.maxTemperatureC')
    const words = solvedWords(d.checked, 'when the hotter of winding and case, both from T_s, is at T_max')
    d.found('t', ['duration', 'time to the limit'], words, d.checked.evaluation.times.secondsToLimit)
  },
}

const caseAtLimitC: Subject = {
  title: 'What the case has when the pattern’s load has grown until the motor is at its limit.',
  state: inCase('pattern'),
  source: 'all excess over what cools the motor grows alike [assumption]',
  missing: firstOf(motorHeatNeeds, runaway, ({ evaluation }) =>
    Number.isNaN(evaluation.times.caseAtLimit) ? { why: 'the pattern does not warm the motor.' } : null,
  ),
  write: (d) => {
    const { heat } = d.checked.evaluation
    d.figure('T', 'steadyMotorC')
    const sensed = heat.nodes.two ? 'steadyCaseC' : 'steadyWindingC'
    d.figure('T_c', sensed)
    d.entry('T_max', 'motor.maxTemperatureC')
    sink(d)
    const expression = 'T_s + (T_c - T_s) * (T_max - T_s) / (T - T_s)'
    d.step('T_l', ['temperature', 'case at the limit'], expression)
  },
}

/** `f_j`: factor of a jacket that was measured at another flow. */
function jacket(d: Draft): void {
  const { machine, evaluation } = d.checked
  const told = ['none', 'factor of the jacket at this flow'] as const
  if (machine.cooling === null || machine.cooling.testFlow === null) d.given('f_j', told, 1)
  else {
    d.entry('V_f', 'cooling.flowLPerMin')
    d.entry('V_j', 'cooling.testFlowLPerMin')
    const factor = evaluation.heat.toSink / (machine.motor.caseToSink ?? NaN)
    d.found('f_j', told, 'the greater of 1 and (V_j / V_f)^0.8 (Dittus and Boelter)', factor)
  }
}

const labelMotorC: Subject = {
  title:
    'Where the winding would settle at the label’s current for long: whether label and resistance agree.',
  state: 'at 25 °C, no iron loss',
  source: balance,
  missing: firstOf(needing('motor.continuousAmps'), motorHeatNeeds, ({ evaluation }) =>
    evaluation.times.labelRunaway
      ? { why: 'thermal runaway: label current and thermal resistance can’t both be true.' }
      : null,
  ),
  write: (d) => {
    const { heat } = d.checked.evaluation
    d.entry('I_c', 'motor.continuousAmps')
    d.entry('R_20', 'motor.resistanceMilliohm')
    d.constant('alpha_cu', 'copperTemperatureCoefficient')
    if (heat.nodes.two) {
      d.entry('R_wc', 'motor.windingToCaseKPerW')
      d.entry('R_cs', 'motor.caseToSinkKPerW')
      jacket(d)
      d.step('R_w', ['thermalResistance', 'winding to what cools it'], 'R_wc + f_j * R_cs')
    } else {
      d.entry('R_th', 'motor.thermalResistanceKPerW')
      d.step('R_w', ['thermalResistance', 'winding to what cools it'], 'R_th')
    }
    d.step('P_20', ['watts', 'copper loss at 20 °C'], 'I_c^2 * R_20')
    const expression = '25 + R_w * P_20 * (1 + alpha_cu * 5) / (1 - R_w * P_20 * alpha_cu)'
    d.step('T', ['temperature', 'winding at the label’s current'], expression)
  },
}

const controllerMissing = firstOf(needing('controller.thermalResistanceKPerW'), ({ machine, ...checked }) =>
  machine.cooling === null ? null : runaway({ machine, ...checked }),
)

const controllerTemperature: Subject = {
  title: 'The controller’s hottest moment in the pattern, repeated until every round is like the one before.',
  state: inCase('pattern'),
  source: 'heat balance of a lump to its sink; hard-switched half bridge, handbooks of power electronics',
  assumptions: [steadyRows],
  missing: controllerMissing,
  write: (d) => {
    const { evaluation } = d.checked
    d.figure('P_e', 'controllerLossWatts')
    d.entry('R_e', 'controller.thermalResistanceKPerW')
    if (d.checked.machine.controller.heatCapacity !== null) d.entry('C_e', 'controller.heatCapacityJPerK')
    sink(d)
    const told = ['temperature', 'air or coolant that cools the controllers'] as const
    d.found('T_e', told, 'T_s, and what the motors warm the coolant', evaluation.heat.controllerFeed)
    const words =
      'R_e (as seen from the inlet of a stream) times the loss above T_e: each row solved exactly, at the hottest row end; without its C_e at the mean P_e'
    d.found('T', ['temperature', 'controller'], words, evaluation.heat.controller)
  },
}

const steadyControllerC: Subject = {
  ...controllerTemperature,
  missing: firstOf(
    controllerMissing,
    needing('controller.pwmKhz', 'controller.switchingNs'),
    ({ machine }) => (knowsSwitching(machine.controller) ? null : { why: 'switching losses are not known.' }),
  ),
}

export const heatWorkings = {
  steadyMotorC: hottest(
    'The hotter of winding and case at the hottest row end: magnets sit with the case.',
    'hotter of winding and case',
    ({ evaluation }) => evaluation.heat.end.hottest,
  ),
  steadyWindingC: hottest('The winding then.', 'winding', ({ evaluation }) => evaluation.heat.end.winding),
  steadyCaseC: hottest('The case then.', 'case', ({ evaluation }) => evaluation.heat.end.case, oneNode),
  caseAtLimitC,
  secondsToMotorLimit,
  steadyControllerC,
  steadyControllerAtLeastC: {
    ...controllerTemperature,
    title: 'The controller’s hottest moment, at least: conduction, and switching where it is known.',
  },
  holdMotorAmps: {
    title: 'What each motor draws to hold the machine on its slope, friction of ground and track helping.',
    state: 'at rest, magnets at the motor’s limit, gear friction left out',
    source: 'statics of the machine on its slope',
    write: (d) => {
      const { footing } = d.checked.evaluation
      const held = footing.standingResistance - 2 * footing.groundResistance
      d.figure('R_0', 'groundResistanceN')
      d.entry('grade', 'ground.gradePercent')
      const told = ['force', 'slope and tow, less what the ground holds'] as const
      d.found('F_s', told, 'R_0 less twice the part of it that is there on any grade', held)
      d.entry('D_0', 'track.internalDragN')
      d.figure('G', 'ratio')
      sprocketRadius(d)
      d.entry('M', 'motor.count')
      d.entry('Kv', 'motor.kvRpmPerVolt')
      d.entry('T_max', 'motor.maxTemperatureC')
      const magnets = ['temperatureCoefficient', 'flux of the magnets with heat'] as const
      d.row('alpha_m', 'motor.magnet', magnets, d.checked.machine.motor.fluxCoefficient)
      const constant = '60 / (2 * pi * Kv) * (1 + alpha_m * (T_max - 20))'
      d.step('K_t', ['torqueConstant', 'torque constant'], constant)
      d.step('I_h', ['amps', 'current that holds it'], 'max(0, F_s - D_0) * r / (G * M * K_t)')
    },
  },
  secondsToHoldLimit: secondsTo('hold'),
  secondsToLaunchLimit: secondsTo('launch'),
  secondsToPivotLimit: secondsTo('pivot'),
  caseHoldLimitC: caseAt('hold'),
  caseLaunchLimitC: caseAt('launch'),
  casePivotLimitC: caseAt('pivot'),
  labelMotorC,
} satisfies Record<string, Subject>
