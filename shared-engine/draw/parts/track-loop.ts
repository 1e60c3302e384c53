import type { TrackPart } from '../../machine/parts.ts'
import { bracketedRoot } from '../../numeric/root.ts'
import { loopRound } from './loop.ts'
import type { Loop, LoopWheel } from './loop.ts'

/** The loop laid round its wheels, m; the sprocket's middle is the origin, the machine faces right. */
export interface TrackLayout {
  readonly loop: Loop
  readonly sprocket: LoopWheel
  readonly idler: LoopWheel
  readonly roadWheels: readonly LoopWheel[]
  /** m below the sprocket's middle: the pitch line on the ground. */
  readonly ground: number
  /** m: contact patch as drawn, from its rear to its front edge. */
  readonly patch: { readonly from: number; readonly to: number }
  /** Whether the patch has the length that was entered. */
  readonly patchAsEntered: boolean
}

/** Road wheels and overhangs as shares of the sprocket's radius (for the drawing: the build says nothing of them). */
const roadShare = 0.4
const raiseShare = 0.4
const idlerShare = 0.82
const leastOverhang = 0.35
const usualOverhang = 1.15

interface Stance {
  readonly contact: number
  readonly overhang: number
}

function wheelsOf(radius: number, { contact, overhang }: Stance): readonly LoopWheel[] {
  const ground = radius * (1 + raiseShare)
  const road = radius * roadShare
  const idlerRadius = radius * idlerShare
  const count = Math.max(2, Math.min(6, Math.round(contact / (2.5 * road)) + 1))
  const roadWheels = Array.from({ length: count }, (_, index) => ({
    centre: { x: overhang + contact * (1 - index / (count - 1)), y: ground - road },
    radius: road,
  }))
  const sprocket = { centre: { x: 0, y: 0 }, radius }
  const idler = { centre: { x: contact + 2 * overhang, y: idlerRadius - radius }, radius: idlerRadius }
  return [sprocket, idler, ...roadWheels]
}

/** Where a rising measure reaches `wanted`; `high` where it never does. */
function reach(low: number, high: number, wanted: number, measure: (value: number) => number): number {
  return bracketedRoot((value) => measure(value) - wanted, low, high) ?? high
}

function stanceOf(radius: number, length: number, contactLength: number | null): Stance | null {
  const lengthOf = (stance: Stance): number => loopRound(wheelsOf(radius, stance), 1).length
  const least = leastOverhang * radius
  const usual = usualOverhang * radius
  if (contactLength !== null && lengthOf({ contact: contactLength, overhang: least }) <= length) {
    const overhang = reach(least, length, length, (value) =>
      lengthOf({ contact: contactLength, overhang: value }),
    )
    return { contact: contactLength, overhang }
  }
  // The overhang that is usual, or as much of it as the loop allows.
  const shortest = (overhang: number): number => lengthOf({ contact: 0.05 * radius, overhang })
  if (shortest(least) > length) return null
  const overhang = shortest(usual) <= length ? usual : reach(least, usual, length, shortest)
  const contact = reach(0.05 * radius, length, length, (value) => lengthOf({ contact: value, overhang }))
  return { contact, overhang }
}

/**
 * Lays the loop round sprocket, idler and road wheels so that its pitch line has its true length and the patch, where
 * entered, too; `null` where the loop is too short to go round its own sprocket and an idler.
 */
export function trackLayout(track: TrackPart, contactLength: number | null): TrackLayout | null {
  const length = track.loopPitches * track.pitch
  const stance = stanceOf(track.radius, length, contactLength)
  if (stance === null) return null
  const wheels = wheelsOf(track.radius, stance)
  const [sprocket, idler, ...roadWheels] = wheels
  if (sprocket === undefined || idler === undefined) return null
  return {
    loop: loopRound(wheels, track.pitch),
    sprocket,
    idler,
    roadWheels,
    ground: track.radius * (1 + raiseShare),
    patch: { from: stance.overhang, to: stance.overhang + stance.contact },
    patchAsEntered: contactLength !== null && Math.abs(stance.contact - contactLength) < 1e-9 * contactLength,
  }
}
