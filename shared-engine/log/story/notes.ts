import type { Judged } from '../episodes/all.ts'
import type { LogFacts } from '../facts/facts.ts'
import type { ReadLog } from '../read.ts'
import type { JudgedRpm } from '../columns/rpm-scale.ts'
import { formatText } from '../../units/display.ts'
import { channelRows } from '../../reference/columns.ts'
import { unknownUnitIn } from '../text/heading.ts'

/** What has to be said beside a log's numbers: how the rpm was read, what was not judged and why, what is left out. */
export function notesOf(log: ReadLog, judged: Judged, facts: LogFacts): readonly string[] {
  return [
    ...rpmNotes(log.rpm),
    ...unitNotes(log),
    ...signNotes(log),
    ...notJudgedNotes(log, judged),
    ...currentNotes(log, facts),
    neverTold,
  ]
}

const neverTold =
  'A log of these channels cannot tell teeth that ratchet over the sprocket, nor a front that lifts: neither is looked for.'

function rpmNotes(rpm: JudgedRpm | null): readonly string[] {
  if (rpm === null) return []
  const { meaning, fits, declared, evidence } = rpm.reading
  const others = fits.filter((fit) => fit !== meaning)
  const also = others.length === 0 ? '' : `; ${others.join(', ')} would fit as well`
  if (rpm.changed) {
    return [
      `The rpm is read as ${meaning}, not ${declared} as its heading says: only so does it fit the volts and the motor’s Kv${also}. Confirm it, or name the factor in a file of columns.`,
    ]
  }
  if (rpm.odd) {
    return [
      `The rpm does not fit the volts and the motor’s Kv by any known scale (${formatText(evidence, 'none', 'metric')} of an unloaded motor’s as headed): Kv, pole count or ratio of the build may be another machine’s. It is read as headed.`,
    ]
  }
  return others.length === 0 ? [] : [`The rpm is read as ${meaning}${also}.`]
}

/** Columns whose headings say a unit or a scale that nothing is known of: no number is taken for another in silence. */
function unitNotes({ columns }: ReadLog): readonly string[] {
  return columns.flatMap(({ column, channel, unit, isUnitSaid, factor, offset }) => {
    const said = unknownUnitIn(column.name)
    const hasUnit = channelRows.some(({ id, kind }) => id === channel && kind !== null && kind !== 'time')
    if (said === null || isUnitSaid || unit === null || !hasUnit || factor !== 1 || offset !== 0) return []
    return [
      `“${column.name}” says ${said}, which is no unit that is known: its numbers are read as they stand, in ${unit.key.toUpperCase()}. If they are not, name its unit or a factor.`,
    ]
  })
}

/** Part of the samples below zero from which a current is doubted. *Source:* common practice, no source. */
const mostlyBelow = 0.75

/** A current that is below zero while the motor turns: recorders differ in which way they count. */
function signNotes({ data, model }: ReadLog): readonly string[] {
  const rpm = data.channels.get('rpm')
  return (['amps', 'motorAmps'] as const).flatMap((id) => {
    const channel = data.channels.get(id)
    if (channel === undefined || rpm === undefined) return []
    let [below, all] = [0, 0]
    for (const row of channel.samples) {
      if (!(Math.abs(rpm.at(row)) >= turning * model.freeRpm)) continue
      all += 1
      if ((channel.values[row] ?? 0) < 0) below += 1
    }
    if (all < fewest || below < mostlyBelow * all) return []
    return [
      `The ${id === 'amps' ? 'pack’s' : 'motor’s'} amps are below zero in ${below} of ${all} samples while the motor turns: it would have been driven all the way. If the recorder counts what is drawn as less than zero, give the column a factor of −1.`,
    ]
  })
}

/** Share of the free rpm from which the motor turns, and samples that are too few to tell. *Source:* common practice, no source. */
const turning = 0.1
const fewest = 10

function notJudgedNotes({ data }: ReadLog, judged: Judged): readonly string[] {
  const { channels } = data
  const notes: string[] = []
  if (!channels.has('rpm')) {
    return ['Spinning, load lost, jams and cut-offs are not judged: the log has no rpm.']
  }
  if (!judged.loadLost) {
    const why = ['amps', 'motorAmps', 'volts'].some((id) => channels.has(id as 'amps'))
      ? 'at no time did the track clearly carry a load by current or sag'
      : 'the log has neither a current nor the pack’s volts'
    notes.push(`Whether the load went is not judged: ${why}.`)
  }
  if (!judged.stall)
    notes.push('Jams and stalls are not judged: the log has neither throttle, duty nor a current.')
  if (!judged.cutOff) notes.push('Cut-offs are not judged: they need the throttle and a logged current.')
  return notes
}

function currentNotes({ model }: ReadLog, facts: LogFacts): readonly string[] {
  const notes: string[] = []
  if (facts.ampsFrom === 'sag') {
    notes.push(
      `No current was logged: it is told from how far the volts sag below rest, in steps of ${formatText(facts.sagStepAmps, 'amps', 'metric')}, by the build’s pack resistance.`,
    )
  } else if (facts.ampsFrom !== null && model.accessoryAmps > 0) {
    notes.push(
      `The pack’s amps include ${formatText(model.accessoryAmps, 'amps', 'metric')} of accessories, which are taken off.`,
    )
  }
  if (facts.ampsFrom !== null) {
    notes.push(
      'Forces are those of the motor’s current: what the rotor gives off as it is braked comes on top, and can pass them.',
    )
  }
  return notes
}
