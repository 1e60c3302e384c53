import type { Checked } from '../check.ts'
import { stageKinds } from '../entries/parts/stages/kinds.ts'
import { stageOrders } from '../limits/stage.ts'
import { formatText } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'

/** What to buy or cut for one part of the machine. */
interface Order {
  /** `stage.1`, `track`. */
  readonly part: string
  /** "Reduction 1, roller chain". */
  readonly label: string
  /** "chain of 12.7 mm pitch, 76 links; …" */
  readonly words: string
}

/**
 * What to order by what the build's geometry decides: teeth, module, belts, links and the centre distances that they want,
 * the sprocket and the loop. A bought gearbox is not in it: only its ratio is known.
 *
 * *Source:* the fits of `docs/model.md` §4.
 */
export function orderOf({ machine, build }: Checked, system: UnitSystem): readonly Order[] {
  const words = stageOrders(machine, system)
  const stages = build.stages.flatMap(({ kind, ...stage }, at): Order[] => {
    const said = words[at]
    if (said === null || said === undefined) return []
    const size = 'profile' in stage ? ` ${stage.profile}` : 'size' in stage ? ` ${stage.size}` : ''
    const label = `Reduction ${at + 1}, ${stageKinds[kind].label.toLowerCase()}${size}`
    return [{ part: `stage.${at + 1}`, label, words: said }]
  })
  return [...stages, trackOrder(machine.track, system)]
}

function trackOrder(track: Checked['machine']['track'], system: UnitSystem): Order {
  const { sprocketTeeth, pitch, loopPitches, length, count } = track
  const sprocket = `drive sprocket of ${sprocketTeeth} teeth on a pitch of ${formatText(pitch, 'length', system)}`
  const loop = `loop of ${loopPitches} pitches, ${formatText(length, 'length', system)} round`
  return {
    part: 'track',
    label: `Track${count > 1 ? `, ${count} times` : ''}`,
    words: `${sprocket}; ${loop}`,
  }
}
