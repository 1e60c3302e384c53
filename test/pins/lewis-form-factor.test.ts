import { expect, it } from 'vitest'
import { lewisFormFactor } from '../../shared-engine/reference/gears.ts'

// A pin: the table's own rows typed a second time, both from memory. What is independent of it stands in
// `test/sources/shigley-lewis.test.ts`.

/**
 * *Source:* Budynas and Nisbett, Shigley's Mechanical Engineering Design, table 14-2: Lewis form factor Y, 20° full-depth
 * teeth loaded at the tip. Written from memory.
 */
const table14x2 = [
  [12, 0.245],
  [13, 0.261],
  [14, 0.277],
  [15, 0.29],
  [16, 0.296],
  [17, 0.303],
  [18, 0.309],
  [19, 0.314],
  [20, 0.322],
  [21, 0.328],
  [22, 0.331],
  [24, 0.337],
  [26, 0.346],
  [28, 0.353],
  [30, 0.359],
  [34, 0.371],
  [38, 0.384],
  [43, 0.397],
  [50, 0.409],
  [60, 0.422],
  [75, 0.435],
  [100, 0.447],
  [150, 0.46],
  [300, 0.472],
  [400, 0.48],
] as const

it.each(table14x2)('%d teeth: %d', (teeth, form) => {
  // 12 digits: a row of the table itself.
  expect(lewisFormFactor(teeth)).toBeCloseTo(form, 12)
})
