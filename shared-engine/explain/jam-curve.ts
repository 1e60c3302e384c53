import { check, type Checked } from '../check.ts'
import { withEntry } from '../entries/edit.ts'
import { completeBuild, readStoredBuildValue } from '../entries/read.ts'
import type { StoredBuild } from '../entries/schema.ts'
import type { LimitId } from '../limits/id.ts'
import { limitOf } from '../limits/table.ts'
import { fromEngine } from '../units/convert.ts'
import { Jams } from './jams.ts'
import { breaksOf } from './mishaps.ts'

/** A part that a jam breaks, and from which belt speed on. */
interface JamBreak {
  readonly limit: LimitId
  readonly label: string
  /** "breaks the loop". */
  readonly breaks: string
  /** m/s; 0: at any speed. */
  readonly speed: number
}

/** Pull of one loop at the peak of a stop over the belt speed it is stopped from. */
export interface JamCurve {
  /** m/s, rising from 0. */
  readonly speeds: readonly number[]
  /** N. */
  readonly pulls: readonly number[]
  /** What goes, slowest first. */
  readonly breaks: readonly JamBreak[]
  /** Belt speed at top speed, null without one, and running free; m/s. */
  readonly top: number | null
  readonly free: number
}

/** Points of a curve. */
const points = 60
/** The axis reaches a little past the fastest that the belt can run. */
const beyond = 1.05

/**
 * Force of a jam over belt speed, with the speed at which each part goes; null where no stop is judged.
 *
 * *Source:* the stop of `docs/model.md` §6 at every speed.
 */
export function jamCurveOf({ machine, limits, evaluation }: Checked): JamCurve | null {
  if (!evaluation.jam.isJudged) return null
  const jams = new Jams(machine)
  const fastest = beyond * Math.max(jams.freeSpeed, jams.topSpeed || 0)
  const speeds = Array.from({ length: points + 1 }, (_, at) => (fastest * at) / points)
  const breaks = limits
    .filter(({ group, case: name }) => group === 'mishap' && (name === 'stop' || name === 'stop-free'))
    .flatMap(({ id }): JamBreak[] => {
      const speed = jams.reachedAt(id, fastest)
      return speed === null
        ? []
        : [{ limit: id, label: limitOf(id)?.label ?? id, breaks: breaksOf(id), speed }]
    })
    .sort((one, other) => one.speed - other.speed)
  return {
    speeds,
    pulls: speeds.map((speed) => jams.pullAt(speed)),
    breaks,
    top: Number.isNaN(jams.topSpeed) ? null : jams.topSpeed,
    free: jams.freeSpeed,
  }
}

/** Pull of a jam at top speed over how far from the sprocket the loop is held. */
export interface JamOverSpan {
  /** m, rising. */
  readonly spans: readonly number[]
  /** N; null where none is judged. */
  readonly pulls: readonly (number | null)[]
  /** Span that the build counts with, m. */
  readonly today: number
}

/** Spans tried: from one pitch to half of the loop, evenly in their logarithms. */
const spansTried = 16

/**
 * A nearer obstacle stops the loop harder: force over the free span, all else as built.
 *
 * @param stored the build
 * @returns null where no stop is judged
 * *Source:* the stop of `docs/model.md` §6 with another `track.tightSpanMm`.
 */
export function jamOverSpan(stored: StoredBuild, { machine, evaluation }: Checked): JamOverSpan | null {
  if (!evaluation.jam.isJudged) return null
  const { track } = machine
  const most = Math.max(track.pitch * 2, track.length / 2)
  const spans = Array.from(
    { length: spansTried },
    (_, at) => track.pitch * (most / track.pitch) ** (at / (spansTried - 1)),
  )
  return { spans, pulls: spans.map((span) => pullWithSpan(stored, span)), today: track.tightSpan }
}

function pullWithSpan(stored: StoredBuild, span: number): number | null {
  const read = readStoredBuildValue(withEntry(stored, 'track.tightSpanMm', fromEngine(span, 'length')))
  if (!read.ok) return null
  const { jamForceN, jamFreeForceN } = check(completeBuild(read.value)).figures
  return jamForceN ?? jamFreeForceN
}
