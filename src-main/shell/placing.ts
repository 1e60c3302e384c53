/** A place on the screen, px. */
interface Place {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** How far a window that has no room beside the first stands off it, px. */
const step = 32

/**
 * Where a further window goes: beside the one before where the screen has the room, else a step off it, and back to the
 * upper left where that would leave the screen. Never exactly over it, or it would seem to have taken its place.
 *
 * @param before the window in front
 * @param room what of its screen windows may take
 */
export function placeBeside(before: Place, room: Place): Pick<Place, 'x' | 'y'> {
  const { width, height } = before
  const right = room.x + room.width
  if (before.x + 2 * width <= right) return { x: before.x + width, y: before.y }
  if (before.x - width >= room.x) return { x: before.x - width, y: before.y }
  const [x, y] = [before.x + step, before.y + step]
  if (x + width <= right && y + height <= room.y + room.height) return { x, y }
  const corner = { x: room.x, y: room.y }
  const isThere = before.x < corner.x + step && before.y < corner.y + step
  return isThere ? { x: corner.x + step, y: corner.y + step } : corner
}
