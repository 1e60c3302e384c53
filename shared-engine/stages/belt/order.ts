import type { UnitSystem } from '../../units/kinds.ts'
import { finiteOrNull } from '../../numeric/finite.ts'
import { formatText } from '../../units/display.ts'
import type { BeltStage } from './machine.ts'
import { beltFitOf } from './physics.ts'

/**
 * What fits a belt drive decides: the belt's whole teeth, and the centre distance in m that they want.
 *
 * *Source:* {@link beltFitOf}.
 */
export function beltFitFacts(stage: BeltStage): Readonly<Record<string, number | null>> {
  const { teeth, centre } = beltFitOf(stage)
  return { beltTeeth: teeth, beltLengthM: teeth * stage.pitch, centreM: finiteOrNull(centre) }
}

/**
 * What to buy for a belt drive, in words.
 *
 * *Source:* {@link beltFitOf}.
 */
export function beltOrder(stage: BeltStage, system: UnitSystem): string {
  const { teeth, centre } = beltFitOf(stage)
  const length = (value: number) => formatText(value, 'length', system)
  const pulleys = `pulleys of ${stage.driverTeeth} and ${stage.drivenTeeth} teeth`
  if (!Number.isFinite(centre))
    return `${pulleys}; a belt of ${teeth} teeth, nearest to the centre distance entered, does not reach round them`
  return `belt of ${teeth} teeth, ${length(teeth * stage.pitch)} round, ${length(stage.width)} wide; ${pulleys}; it wants a centre distance of ${length(centre)}`
}
