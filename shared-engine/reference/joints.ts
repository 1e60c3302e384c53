import table from './joints.json' with { type: 'json' }
import { piecewiseLinear } from '../numeric/table.ts'
import { assertTable, fromMillimetres, positive } from './table.ts'
import { z } from './zod.ts'

const text = z.string().min(1)

const kindSchema = z.strictObject({
  label: text,
  bendingNotch: positive,
  torsionNotch: positive,
  lasts: positive.nullable(),
  source: text,
})

const jointTableSchema = z.strictObject({
  about: text,
  version: z.literal(2),
  fromMemory: z.boolean(),
  keys: z.strictObject({
    source: text,
    over: z.array(positive).min(2),
    width: z.array(positive).min(2),
    height: z.array(positive).min(2),
    smallest: positive,
    largest: positive,
  }),
  screws: z.strictObject({
    source: text,
    diameterMm: z.array(positive).min(2),
    lbf: z.array(positive).min(2),
    newtonPerLbf: positive,
  }),
  kinds: z.strictObject({
    key: kindSchema,
    screw: kindSchema,
    pin: kindSchema,
    clamp: kindSchema,
    flat: kindSchema,
    none: kindSchema,
  }),
})

const read = assertTable('joints', jointTableSchema, table)

/** A way to hold a wheel on its shaft, and none. */
type JointTableKind = keyof typeof read.kinds

const overs = read.keys.over.map(fromMillimetres)
const widths = read.keys.width.map(fromMillimetres)
const heights = read.keys.height.map(fromMillimetres)

/** Row of the keys' table for a shaft: the last one that begins below its diameter, else the first. */
function keyRow(diameter: number): number {
  let row = 0
  while (row + 1 < overs.length && (overs[row + 1] ?? Infinity) < diameter) row += 1
  return row
}

/**
 * Width of the parallel key of a shaft.
 *
 * @param diameter d, m
 * @returns b, m
 * *Source:* DIN 6885-1/ISO 773, from memory.
 * @example keyWidth(0.02) // 0.006
 */
export function keyWidth(diameter: number): number {
  return widths[keyRow(diameter)] ?? 0
}

/**
 * Height of the parallel key of a shaft.
 *
 * @param diameter d, m
 * @returns h, m
 * *Source:* DIN 6885-1/ISO 773, from memory.
 * @example keyHeight(0.02) // 0.006
 */
export function keyHeight(diameter: number): number {
  return heights[keyRow(diameter)] ?? 0
}

const holdingAt = piecewiseLinear(
  read.screws.diameterMm.map(fromMillimetres),
  read.screws.lbf.map((force) => force * read.screws.newtonPerLbf),
  'hold',
)

/**
 * Force with which one cup-point grub screw holds at the shaft's surface.
 *
 * @param diameter of the screw, m; held to the table's ends
 * @returns N
 * *Source:* Shigley's Mechanical Engineering Design, table 7-4, from memory; a public workshop chart gives less than half.
 * @example screwHolding(0.00635) // 4448.2
 */
export function screwHolding(diameter: number): number {
  return holdingAt(diameter)
}

/** What a joint does to its shaft: notch factors of bending and torsion. *Source:* each row of `joints.json` its own. */
export function notchOf(kind: JointTableKind): { readonly bending: number; readonly torsion: number } {
  return notches[kind]
}

const notches = {
  key: notchRow('key'),
  screw: notchRow('screw'),
  pin: notchRow('pin'),
  clamp: notchRow('clamp'),
  flat: notchRow('flat'),
  none: notchRow('none'),
}

function notchRow(kind: JointTableKind) {
  return { bending: read.kinds[kind].bendingNotch, torsion: read.kinds[kind].torsionNotch }
}

/** Words of a kind of joint. */
export function jointLabel(kind: JointTableKind): string {
  return read.kinds[kind].label
}

/** Where a kind's notch factors and lasting share come from. */
export function jointSource(kind: JointTableKind): string {
  return read.kinds[kind].source
}

/**
 * Part of what a joint holds once that it holds for good.
 *
 * @returns 0 to 1
 * *Source:* each row of `joints.json` its own: common practice and assumptions.
 */
export function lastingShare(kind: Exclude<JointTableKind, 'none'>): number {
  return read.kinds[kind].lasts ?? 0
}
