import type { PatternRowPart } from '../machine/parts.ts'

/** A drive in rows. */
export interface Pattern {
  readonly name: string
  readonly notes: string
  readonly rows: readonly PatternRowPart[]
}

/** Time within which a driver closes a gap of speed, s. *Source:* assumption: calm driving by feel. */
export const driverTime = 1

/**
 * m/s below which a machine that is to stand does stand: the driver's gap closes for ever and would leave it creeping, with
 * the current of its resistance, until rounding ends it. *Source:* what the run is right to; assumption.
 */
export const restSpeed = 1e-6

/** °C of the winding at which a drive ends: insulation is gone and the motor's constants mean nothing. *Source:* assumption. */
export const hottestWinding = 300

/** Beyond this share of the grip a force only spins the track up. *Source:* assumption. */
export const spinUpShare = 1.05

/** Where the pack's energy went, J, of all motors. */
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
 * What is followed through time. The first nine decide what happens next, the rest are integrals for the books: J, s, A²·s.
 */
export const stateNames = [
  'chargeDrawn', // A·s
  'winding', // °C; the one node where there is one
  'case', // °C
  'controller', // °C
  'coolant', // °C
  'packTemperature', // °C
  'speed', // m/s
  'belt', // m/s, while the track spins; else of no meaning
  'distance', // m
  'height', // m above the start
  'packEnergy',
  ...energySinks,
  'motorAmpsSquared',
  'packAmpsSquared',
  'ironOfOne', // J of one motor
  'back', // J into the pack's terminals
  'wheelBrake',
  'turns', // J that turning takes from the shafts
  'rotors', // J given to what spins and circulates
  'loads', // J that loads bring or take where they change in motion
  'capped', // J that a duty at its cap leaves out
  'turnSeconds',
  'spinSeconds',
  'heatMade',
  'heatToAir',
] as const

export type StateName = (typeof stateNames)[number]

/** Place of each state. */
export const place = Object.fromEntries(stateNames.map((name, at) => [name, at])) as Readonly<
  Record<StateName, number>
>

export type EnergySink = (typeof energySinks)[number]
