import { z } from '../reference/zod.ts'

export const spaceFormat = 'pitchline-space'
export const spaceVersion = 1

/** Most rows that a search keeps. */
export const mostKept = 500
/** Rows kept where the space does not say. */
export const usualKept = 20

/** A number, or a quantity with its unit as a builder types it: `11.1`, `"40 km/h"`. */
const quantity = z.union([z.number(), z.string()])

/** Evenly spaced values. */
const range = z.strictObject({ from: z.number(), to: z.number(), step: z.number() })

/** A motor to try: a name, and the build's whole `motor` group. */
const motorChoice = z.strictObject({
  name: z.string().min(1).max(120),
  motor: z.record(z.string(), z.unknown()),
})

/** A figure of `check`, or one of the search's own: `worstMargin`, and `secondsTo` with the speed to reach. */
const measureKeys = { figure: z.string(), speed: quantity.optional() }

const bound = z.strictObject({ ...measureKeys, atLeast: quantity.optional(), atMost: quantity.optional() })
const aim = z.strictObject({ ...measureKeys, best: z.enum(['most', 'least']) })

/**
 * What to vary, what must hold and what to aim for: the shape of a `*.space.json`. Margins are shares of the limit (0.2
 * keeps 20 % in hand); `null` takes a limit out of a wider pattern's demand.
 */
export const spaceSchema = z.strictObject({
  format: z.literal(spaceFormat),
  version: z.literal(spaceVersion),
  name: z.string().max(120).optional(),
  notes: z.string().max(10_000).optional(),
  owned: z.record(z.string(), z.array(z.number())).optional(),
  vary: z.record(z.string(), z.union([z.array(z.number()), range, z.string(), z.array(motorChoice)])),
  hold: z
    .strictObject({
      margins: z.record(z.string(), z.number().min(-10).max(1).nullable()).optional(),
      figures: z.array(bound).max(40).optional(),
    })
    .optional(),
  aim: z.union([aim, z.array(aim).min(1).max(2)]),
  map: z.array(z.strictObject(measureKeys)).length(2).optional(),
  keep: z.number().int().min(1).max(mostKept).optional(),
})

/** A space as its file holds it. */
export type StoredSpace = z.output<typeof spaceSchema>
/** Values of one entry: a list, evenly spaced ones, or the name of one of the lists of teeth owned. */
export type SpaceValues = number[] | z.output<typeof range> | string
export type MotorChoice = z.output<typeof motorChoice>
export type StoredBound = z.output<typeof bound>
export type StoredMeasure = Pick<StoredBound, 'figure' | 'speed'>
export type SpaceQuantity = z.output<typeof quantity>
