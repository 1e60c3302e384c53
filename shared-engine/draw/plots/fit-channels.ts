import { fittedChannelWords, fittedSentence, type FittedChannel } from '../../validate/fitted.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import { sameCursor } from '../readout.ts'
import type { Scene } from '../scene.ts'
import { absentPlot, type PlotLook } from './plot-look.ts'

const name = 'fit-channels'
const title = 'Measured and predicted, before and after the fit'

/** Samples further apart than this are not joined, s. */
const longest = 6
/** More dots than this side by side are a smear: means of as many samples as it takes are drawn. */
const mostDots = 300

/** One segment of a channel, gaps left open by a null. */
interface Part {
  readonly seconds: readonly number[]
  readonly measured: readonly (number | null)[]
  readonly before: readonly (number | null)[]
  readonly after: readonly (number | null)[]
}

function partOf({ segments, seconds, measured, before, after }: FittedChannel, segment: number): Part {
  const own = seconds.flatMap((_, at) => (segments[at] === segment ? [at] : []))
  const each = Math.ceil(own.length / mostDots)
  const part = {
    seconds: [] as number[],
    measured: [] as (number | null)[],
    before: [] as (number | null)[],
    after: [] as (number | null)[],
  }
  let [last, bin]: [number, number[]] = [NaN, []]
  const close = () => {
    if (bin.length === 0) return
    const mean = (values: ArrayLike<number>) =>
      bin.reduce((sum, at) => sum + (values[at] ?? NaN), 0) / bin.length
    part.seconds.push(mean(seconds))
    part.measured.push(mean(measured))
    part.before.push(before === null ? null : mean(before))
    part.after.push(mean(after))
    bin = []
  }
  for (const at of own) {
    const now = seconds[at] ?? NaN
    // A stretch may begin at the very moment at which the one before it ends.
    if (now <= last) continue
    if (now - last > longest) {
      close()
      part.seconds.push((now + last) / 2)
      for (const column of [part.measured, part.before, part.after]) column.push(null)
    }
    bin.push(at)
    last = now
    if (bin.length >= each) close()
  }
  close()
  return part
}

/**
 * Channels of one segment of a run over time, a frame for each: dots as measured, the build's prediction before the fit
 * and with what the fit offers taken.
 */
export function fitChannels(channels: readonly FittedChannel[], segment: number, look: PlotLook): Scene {
  const parts = channels
    .map((channel) => ({ channel, part: partOf(channel, segment) }))
    .filter(({ part }) => part.seconds.length > 1)
  if (parts.length === 0)
    return absentPlot(name, title, 'Nothing of this part of the log is predicted.', look)
  const moments = parts.flatMap(({ part }) => [part.seconds[0] ?? 0, part.seconds.at(-1) ?? 0])
  return plot({
    name,
    title,
    summary: parts.map(({ channel }) => fittedSentence(channel, look.system)).join(' '),
    ...look,
    x: { label: 'Time', kind: 'time', fromZero: false },
    panels: parts.map(({ channel: { id, before }, part: { seconds, ...of } }) => ({
      y: { ...fittedChannelWords[id], fromZero: false },
      marks: [
        {
          mark: 'dots',
          label: 'Measured',
          role: 'quiet',
          marker: 'disc',
          xs: seconds,
          ys: of.measured,
          read: true,
        },
        ...(before === null
          ? []
          : [
              {
                mark: 'curve' as const,
                label: 'Before',
                role: 'near' as const,
                dash: [5, 3],
                width: 1.4,
                xs: seconds,
                ys: of.before,
              },
            ]),
        { mark: 'curve', label: 'After', role: 'accent', width: 1.6, xs: seconds, ys: of.after },
      ] satisfies Mark[],
    })),
    cursor: sameCursor('logSeconds', Math.min(...moments), Math.max(...moments)),
  })
}
