/** One stretch of a drive: what the driver does for so long. */
export interface PatternRow {
  readonly seconds: number
  /** What the driver asks for: a duty, 0 to 1 (held to the cap), or a ground speed, m/s. */
  readonly ask: { readonly throttle: number } | { readonly speed: number }
  /** Rise over run, negative downhill; null: as in the build. */
  readonly grade: number | null
}

/** A drive in rows. */
export interface Pattern {
  readonly name: string
  readonly notes: string
  readonly rows: readonly PatternRow[]
}

/** Time within which a driver closes a gap of speed, s. *Source:* assumption: calm driving by feel. */
export const driverTime = 1

/** Coolant in the circuit, as seconds of its flow. *Source:* assumption: hoses, jackets and a small radiator. */
export const coolantTurnover = 20

/** Where the pack's energy went, J; all together they are `packEnergy`, to the error of the steps. */
export const energySinks = [
  'packLoss',
  'accessories',
  'copper',
  'controllerLoss',
  'iron',
  'stages',
  'trackDrag',
  'slip',
  'ground',
  'air',
  'climb',
  'tow',
] as const

/**
 * What is followed through time. The first six decide what happens next, the rest are integrals for the book: J, and A²·s.
 */
export const stateNames = [
  'chargeDrawn', // A·s
  'winding', // °C
  'controller', // °C
  'coolant', // °C
  'speed', // m/s
  'distance', // m
  'packEnergy',
  ...energySinks,
  'motorAmpsSquared',
  'packAmpsSquared',
  'heatMade',
  'heatToAir',
] as const

export type StateName = (typeof stateNames)[number]

/** Place of each state. */
export const place = Object.fromEntries(stateNames.map((name, at) => [name, at])) as Readonly<
  Record<StateName, number>
>

export type EnergySink = (typeof energySinks)[number]
