import type { Draft } from './draft.ts'

// What workings of wires share: their copper, their surface, their currents.

export const wireSource =
  'IEC 60028 for the copper, ASTM B258 for gauges; IEC 60287-2-1 for a single cable in free air, from memory'

const path = (index: number) => `wires.${index}`

/** `A` and `n`: copper of one conductor, and how many there are. */
export function conductor(d: Draft, index: number): void {
  const wire = d.checked.build.wires[index]
  if (wire?.areaMm2 === undefined) {
    d.entry('g', `${path(index)}.awg`)
    d.step('d', ['length', 'diameter of the copper'], '0.000127 * 92^((36 - g) / 39)')
    d.step('A', ['wireSection', 'copper of one conductor'], 'pi * d^2 / 4')
  } else d.entry('A', `${path(index)}.areaMm2`)
  d.entry('n', `${path(index)}.parallel`)
}

/** `D` and `h`: the diameter that gives heat to the air, and how much. */
export function surface(d: Draft, index: number): void {
  const wire = d.checked.build.wires[index]
  if (wire?.outsideMm === undefined) {
    d.assume('Without an outer diameter there is 0.8 mm of insulation all round.')
    d.step('D', ['length', 'diameter over the insulation'], 'sqrt(4 * A / pi) + 0.0016')
  } else d.entry('D', `${path(index)}.outsideMm`)
  const told = ['none', 'W that a metre gives to the air for each K^1.25'] as const
  d.step('h', told, 'pi * D * (0.21 / D^0.6 + 3.94)')
}

/** `P_1 + P_2 …`: the loads behind a step-down. @returns the sum, as an expression */
export function loadsOf(d: Draft, supply: number, key: 'watts' | 'peakWatts'): string {
  const letter = key === 'watts' ? 'P' : 'P_p'
  const terms = d.checked.build.accessories.flatMap((accessory, index) => {
    if (accessory.stepDown !== supply) return []
    const symbol = `${letter}${index + 1}`
    d.entry(symbol, `accessories.${index}.${key}`)
    return [symbol]
  })
  return terms.length === 0 ? '0' : terms.join(' + ')
}

/** `I`: RMS current of a wire's circuit through the pattern, or of all loads of a step-down. */
export function patternAmps(d: Draft, index: number): void {
  const wire = d.checked.build.wires[index]
  const told = ['amps', 'RMS current of the wire'] as const
  if (wire?.circuit === 'pack') {
    d.figure('I_B', 'patternPackAmpsRms')
    d.step('I', told, 'I_B')
  } else if (wire?.circuit === 'motor') {
    d.figure('I_m', 'patternMotorAmpsRms')
    d.step('I', told, 'I_m * sqrt(2 / 3)', 'each of three leads carries it for two thirds of a turn')
  } else {
    const supply = wire?.stepDown ?? 0
    const sum = loadsOf(d, supply, 'watts')
    d.entry('V', `stepDowns.${supply}.volts`)
    d.step('I', told, `(${sum}) / V`)
  }
}

/** `T`: steady temperature of a wire's conductor. */
export function steadyTemperature(d: Draft, index: number): void {
  conductor(d, index)
  surface(d, index)
  patternAmps(d, index)
  d.constant('rho', 'copperResistivity')
  d.constant('alpha_cu', 'copperTemperatureCoefficient')
  d.entry('T_air', 'ground.airTemperatureC')
  d.assume('The conductor is as warm as the surface of its insulation.')
  d.step('q', ['none', 'W of a metre at 20 °C'], '(I / n)^2 * rho / A')
  const words = 'the root of h (T − T_air)^1.25 = q (1 + alpha_cu (T − 20))'
  const value = d.checked.evaluation.wiring.wires[index]?.steady ?? NaN
  d.found('T', ['temperature', 'steady temperature of the conductor'], words, value)
}

/** `I_b`: the burst of a wire's circuit. */
export function burstAmps(d: Draft, index: number, reached: string): void {
  const wire = d.checked.build.wires[index]
  const told = ['amps', 'current of the burst'] as const
  if (wire?.circuit === 'stepDown') {
    const supply = wire.stepDown ?? 0
    const sum = loadsOf(d, supply, 'peakWatts')
    d.entry('V', `stepDowns.${supply}.volts`)
    d.step('I_b', told, `(${sum}) / V`, 'all loads at their peak at once')
    return
  }
  const isPack = wire?.circuit === 'pack'
  if (reached === 'brake') d.figure('I_s', isPack ? 'brakeChargeAmps' : 'brakeMotorAmps')
  else d.figure('I_s', isPack ? 'burstPackAmps' : 'burstMotorAmps')
  d.step('I_b', told, 'I_s')
}
