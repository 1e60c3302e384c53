import { bracketedRoot } from '../numeric/root.ts'
import { growthOver, type NodeMotion } from './two-nodes.ts'

/** Course of the nodes from a start, at a steady load: x(t) = x_0 + f(λ_slow) k_slow + f(λ_fast) k_fast. */
export class NodeCourse {
  slow = 0
  fast = 0
  windingStart = 0
  caseStart = 0
  windingSlow = 0
  windingFast = 0
  caseSlow = 0
  caseFast = 0
}

/**
 * Fills the course.
 *
 * ẋ = e^(A t) (A x_0 + s).
 *
 * @param winding, inCase excess over the sink at the start, K
 * @param sink T_s, °C
 * *Source:* as `NodeMotion`.
 */
export function setNodeCourse(
  course: NodeCourse,
  motion: NodeMotion,
  winding: number,
  inCase: number,
  sink: number,
): void {
  const { slow, fast, ww, wc, cw, cc } = motion
  const source = motion.windingSource + motion.windingSourcePerSink * sink
  const single = fast === -Infinity
  course.slow = slow
  course.fast = fast
  course.windingStart = winding
  course.caseStart = inCase
  course.windingSlow = slow * (ww * winding + wc * inCase) + ww * source + wc * motion.caseSource
  course.windingFast = single ? 0 : fast * (cc * winding - wc * inCase) + cc * source - wc * motion.caseSource
  course.caseSlow = single ? 0 : slow * (cw * winding + cc * inCase) + cw * source + cc * motion.caseSource
  course.caseFast = single ? 0 : fast * (ww * inCase - cw * winding) + ww * motion.caseSource - cw * source
}

/** Excess of the winding after a time, K. *Source:* {@link setNodeCourse}. */
export function windingAfter(course: NodeCourse, seconds: number): number {
  const { windingStart, windingSlow, windingFast, slow, fast } = course
  return windingStart + windingSlow * growthOver(slow, seconds) + windingFast * growthOver(fast, seconds)
}

/** Excess of the case after a time, K. *Source:* {@link setNodeCourse}. */
export function caseAfter(course: NodeCourse, seconds: number): number {
  const { caseStart, caseSlow, caseFast, slow, fast } = course
  return caseStart + caseSlow * growthOver(slow, seconds) + caseFast * growthOver(fast, seconds)
}

/**
 * Seconds until the hotter of both nodes reaches an excess.
 *
 * @param limit K above the sink
 * @returns s; 0 where one is there already, NaN where neither ever gets there
 * *Source:* `docs/model.md` §7; a bracketed root on each rising piece of the course, which turns at most once.
 */
export function secondsToExcess(course: NodeCourse, limit: number): number {
  const { windingStart, caseStart, slow, fast } = course
  const single = fast === -Infinity
  if (windingStart >= limit || (!single && caseStart >= limit)) return 0
  const winding = secondsOfNode(slow, fast, windingStart, course.windingSlow, course.windingFast, limit)
  if (single) return winding
  const inCase = secondsOfNode(slow, fast, caseStart, course.caseSlow, course.caseFast, limit)
  return Number.isNaN(winding) || inCase < winding ? inCase : winding
}

function secondsOfNode(
  slow: number,
  fast: number,
  start: number,
  slowRate: number,
  fastRate: number,
  limit: number,
): number {
  if (fastRate === 0) return secondsOfOne(slow, slowRate, limit - start)
  const excess = (seconds: number): number =>
    start + slowRate * growthOver(slow, seconds) + fastRate * growthOver(fast, seconds) - limit
  // ẋ = k_s e^(λ_s t) + k_f e^(λ_f t) is nothing at most once.
  const share = -fastRate / slowRate
  const turn = share > 1 ? Math.log(share) / (slow - fast) : 0
  if (turn > 0 && excess(turn) >= 0) return bracketedRoot(excess, 0, turn) ?? NaN
  if (!(slowRate > 0)) return NaN
  const settled = slow < 0 ? start - slowRate / slow - fastRate / fast - limit : Infinity
  if (!(settled > 0)) return NaN
  let end = Math.max(turn, -1 / fast)
  for (let doubling = 0; doubling < 200 && excess(end) < 0; doubling += 1) end *= 2
  return bracketedRoot(excess, turn, end) ?? NaN
}

/** One exponential: t = ln(1 + λ d/k)/λ. */
function secondsOfOne(rate: number, start: number, rise: number): number {
  if (!(start > 0)) return NaN
  const share = (rate * rise) / start
  if (share <= -1) return NaN
  return share === 0 ? rise / start : Math.log1p(share) / rate
}
