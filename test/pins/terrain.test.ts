import { expect, it } from 'vitest'
import { terrains } from '../../shared-engine/reference/ground.ts'

// A pin: the table's own rows typed a second time, both from memory.

/**
 * *Source:* Wong, Theory of Ground Vehicles, 3rd ed. p. 136 and 4th ed. (2008), table 2.3: exponent n, k_c kN/m^(n+1),
 * k_φ kN/m^(n+2), cohesion kPa, friction angle. From memory. Rows: dry sand and sandy loams of the Land Locomotion
 * Laboratory, clayey soil from Thailand, snow from the United States (settled) and Sweden (fresh).
 */
it.each([
  ['dry-sand', 1.1, 0.99, 1528.43, 1.04, 28],
  ['sandy-loam', 0.7, 5.27, 1515.04, 1.72, 29],
  ['sandy-loam-wet', 0.2, 2.56, 43.12, 1.38, 38],
  ['clayey-soil', 0.5, 13.19, 692.15, 4.14, 13],
  ['snow-fresh', 1.6, 4.37, 196.72, 1.03, 19.7],
  ['snow-settled', 1.44, 10.55, 66.08, 6, 20.7],
])('%s: n %d, k_c %d, k_φ %d, c %d kPa, φ %d°', (id, n, kc, kphi, cohesionKpa, frictionDegrees) => {
  expect(terrains.get(id)?.soil).toMatchObject({ n, kc, kphi, cohesionKpa, frictionDegrees })
})

it('there is no row that this file does not know', () => {
  expect(terrains.size).toBe(6)
})
