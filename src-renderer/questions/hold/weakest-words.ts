/**
 * What the worst of the mechanical checks means, with what it is the worst of: a limit of the motor or the pack may stand
 * worse beside it.
 *
 * @param margin 1 − actual/allowed or its like; null: exceeded at any strength
 */
export function weakestWords(margin: number | null): string {
  return margin !== null && margin >= 0
    ? 'Of all mechanical checks it has the least in hand, and it holds.'
    : 'Of all mechanical checks it is the worst.'
}
