import type { FitLog, Segment } from './log.ts'

/** A stretch of a log that was driven with the loops in the air. */
export interface InAir {
  /** Of the log as it was read, from 0. */
  readonly segment: number
  /** s in that segment, both ends in it; all of it from −∞ to ∞. */
  readonly from: number
  readonly to: number
}

/** A log with the stretches in the air as segments of their own; what lies between them stays together. */
export function cutInAir(log: FitLog, stretches: readonly InAir[]): FitLog {
  if (stretches.length === 0) return log
  return { ...log, segments: log.segments.flatMap((segment, at) => partsOf(segment, at, stretches)) }
}

function partsOf(segment: Segment, at: number, stretches: readonly InAir[]): readonly Segment[] {
  const own = stretches.filter((one) => one.segment === at)
  const lifted = segment.seconds.map(
    (now) => segment.offGround || own.some(({ from, to }) => now >= from && now <= to),
  )
  const begins = [...lifted.keys()].filter((row) => row === 0 || lifted[row] !== lifted[row - 1])
  return begins.map((first, part): Segment => {
    const end = begins[part + 1] ?? lifted.length
    const channels = Object.entries(segment.channels).map(
      ([name, column]) => [name, column.slice(first, end)] as const,
    )
    return {
      offGround: lifted[first] ?? false,
      seconds: segment.seconds.slice(first, end),
      channels: Object.fromEntries(channels),
      of: at,
    }
  })
}
