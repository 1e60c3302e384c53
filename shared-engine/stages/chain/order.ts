import { finiteOrNull } from '../../numeric/finite.ts'
import { formatText } from '../../units/display.ts'
import type { UnitSystem } from '../../units/kinds.ts'
import type { ChainStage } from './machine.ts'
import { chainFitOf, chainRipple } from './physics.ts'

/**
 * The chain that fits a drive: speed ripple as a share; with a centre distance the even number of links, the
 * same not rounded, and the centre distance in m that they want.
 *
 * *Source:* {@link chainFitOf}, {@link chainRipple}.
 */
export function chainFitFacts(stage: ChainStage): Readonly<Record<string, number | null>> {
  const fit = chainFitOf(stage)
  const speedRipple = chainRipple(stage)
  if (fit === null) return { speedRipple }
  const { links, exactLinks, centre } = fit
  return { links, exactLinks, centreM: finiteOrNull(centre), speedRipple }
}

/**
 * What to buy for a chain drive, in words.
 *
 * *Source:* {@link chainFitOf}.
 */
export function chainOrder(stage: ChainStage, system: UnitSystem): string {
  const fit = chainFitOf(stage)
  const length = (value: number) => formatText(value, 'length', system)
  const wheels = `chain wheels of ${stage.driverTeeth} and ${stage.drivenTeeth} teeth`
  const strands = stage.strands === 1 ? '' : `, ${stage.strands} strands`
  const chain = `chain of ${length(stage.pitch)} pitch${strands}`
  const ripple = `the speed ripples by ${formatText(chainRipple(stage), 'fraction', system)}`
  if (fit === null) return `${chain}; ${wheels}; a centre distance would bring its links; ${ripple}`
  if (!Number.isFinite(fit.centre))
    return `${chain}; ${wheels}; ${fit.links} links, nearest to the centre distance entered, do not reach round them; ${ripple}`
  const apart = fit.centre / stage.pitch
  return `${chain}, ${fit.links} links; ${wheels}; they want a centre distance of ${length(fit.centre)}, ${apart.toFixed(1)} pitches; ${ripple}`
}
