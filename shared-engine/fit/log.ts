/** Channels that a fit reads; what a log does not have stays away. */
export const channelNames = [
  'motorRpm',
  'packVolts',
  'packAmps',
  'motorAmps',
  'duty',
  'groundMps',
  'motorCelsius',
  'controllerCelsius',
] as const
export type ChannelName = (typeof channelNames)[number]

/** Numbers of a channel, row by row; null where a row lacks it. */
export type Column = readonly (number | null)[]

/** One stretch of a log: all channels as long as its seconds. */
export interface Segment {
  /** The loops turned free, lifted off the ground. */
  readonly offGround: boolean
  /** s, rising. */
  readonly seconds: readonly number[]
  readonly channels: Readonly<Partial<Record<ChannelName, Column>>>
  /** The logged segment, from 0, of which this is a part; absent: it is one itself. */
  readonly of?: number
}

/** A log as a fit reads it: rpm mechanical, motor amps one motor's, duty 0 to 1, speed over ground in m/s. */
export interface FitLog {
  readonly segments: readonly Segment[]
  /** σ of channels, where it is known better than from the log. */
  readonly noise: Readonly<Partial<Record<ChannelName, number>>>
}

/** What is told of a log's segments told of those that a person knows: the logged ones, of which they may be parts. */
export function inLoggedSegments({ segments }: FitLog) {
  const logged = segments.map(({ of }, at) => of ?? at)
  return <Told extends { readonly segments: readonly number[] }>(told: Told): Told => ({
    ...told,
    segments: told.segments.map((segment) => logged[segment] ?? segment),
  })
}
