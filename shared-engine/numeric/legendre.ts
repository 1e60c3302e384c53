/** Nodes on [−1, 1], ascending, and their weights. */
export interface Rule {
  readonly nodes: Float64Array
  readonly weights: Float64Array
}

const rules = new Map<number, Rule>()

/** Legendre polynomial P_n and its derivative by the three-term recurrence (Abramowitz and Stegun, table 22.7). */
function legendre(n: number, x: number): readonly [value: number, derivative: number] {
  let before = 1
  let value = x
  for (let degree = 2; degree <= n; degree++) {
    const next = ((2 * degree - 1) * x * value - (degree - 1) * before) / degree
    before = value
    value = next
  }
  return [value, (n * (x * value - before)) / (x * x - 1)]
}

function made(n: number): Rule {
  const nodes = new Float64Array(n)
  const weights = new Float64Array(n)
  for (let index = 0; index < Math.ceil(n / 2); index++) {
    let x = n % 2 === 1 && index === (n - 1) / 2 ? 0 : Math.cos((Math.PI * (index + 0.75)) / (n + 0.5))
    for (let step = 0; step < 10 && x !== 0; step++) {
      const [value, derivative] = legendre(n, x)
      const change = value / derivative
      x -= change
      if (Math.abs(change) < 1e-15) break
    }
    const [, derivative] = n === 1 ? [0, 1] : legendre(n, x)
    const weight = 2 / ((1 - x * x) * derivative * derivative)
    nodes[index] = -x
    nodes[n - 1 - index] = x
    weights[index] = weights[n - 1 - index] = weight
  }
  return { nodes, weights }
}

/**
 * Gauss-Legendre nodes and weights, found by Newton's method from the usual cosine start and kept for the next call.
 *
 * @param n whole number, 1 to 256
 * @throws outside that
 *
 * *Source:* Abramowitz and Stegun, *Handbook of Mathematical Functions*, eqs. 25.4.29 and 22.16.6.
 */
export function legendreRule(n: number): Rule {
  const kept = rules.get(n)
  if (kept !== undefined) return kept
  if (!Number.isInteger(n) || n < 1 || n > 256) throw new Error(`no Gauss-Legendre rule of ${n} nodes`)
  const rule = made(n)
  rules.set(n, rule)
  return rule
}
