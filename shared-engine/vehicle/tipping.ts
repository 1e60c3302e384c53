/**
 * Slope on which a standing machine falls over backwards.
 *
 * atan(x/h).
 *
 * @param ahead x, m, centre of mass ahead of the patch's rear edge
 * @param height h, m
 * @returns rad
 * *Source:* statics.
 * @example tipBackAngle(1, 1) // 0.7853981633974483
 */
export function tipBackAngle(ahead: number, height: number): number {
  return Math.atan(ahead / height)
}

/**
 * Side slope on which a machine with two or more loops falls over.
 *
 * atan((gauge + contactWidth)/2h).
 *
 * @param gauge m between the middles of the outer loops
 * @param contactWidth m of one loop, 0 where it is not known
 * @param height h, m
 * @returns rad
 * *Source:* statics.
 */
export function tipSideAngle(gauge: number, contactWidth: number, height: number): number {
  return Math.atan((gauge + contactWidth) / (2 * height))
}

/**
 * Area that one loop encloses, where it is not measured: a flat loop.
 *
 * max(0, r L − π r²).
 *
 * @param radius r of the sprocket, m
 * @param length L of the loop, m
 * @returns m²
 * *Source:* stadium of two half circles: area r (L − 2πr) + π r².
 */
export function flatLoopArea(radius: number, length: number): number {
  return Math.max(0, radius * length - Math.PI * radius * radius)
}

/**
 * Moment that turns the machine over backwards while its loops spin up.
 *
 * h max(0, F′ − R′) + h m g sin θ + F_t h_t + 2 n m′ A a_b.
 *
 * @param height h, m
 * @param spare F_max′ − R′(0), N
 * @param downhill m g sin θ, N
 * @param towMoment F_t h_t, N·m
 * @param reaction 2 n m′ A, kg·m: angular momentum of the loops for one m/s of belt
 * @param beltAcceleration a_b, m/s²
 * @returns N·m, against W x
 * *Source:* angular momentum of a closed loop (2 m′ A v); the rotors' is left out.
 */
export function spinUpMoment(
  height: number,
  spare: number,
  downhill: number,
  towMoment: number,
  reaction: number,
  beltAcceleration: number,
): number {
  return height * Math.max(0, spare) + height * downhill + towMoment + reaction * beltAcceleration
}
