/** Pitch radius of a chain wheel, m: r = p/(2 sin(π/z)). *Source:* ISO 606, annex; Shigley, eq. 17-29. */
export function chainWheelRadius(pitch: number, teeth: number): number {
  return pitch / (2 * Math.sin(Math.PI / teeth))
}
