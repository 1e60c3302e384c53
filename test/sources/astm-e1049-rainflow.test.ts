import { describe, expect, it } from 'vitest'
import { countsByRange, rainflowCycles, turningPoints } from '../../shared-engine/log/life/rainflow.ts'

// ASTM E1049-85, section 5.4.4 and figure 6: the standard's own example of rainflow counting. History and table written
// from memory of the standard.
const history = [-2, 1, -3, 5, -1, 3, -4, 4, -2]

describe('rainflow counting of ASTM E1049', () => {
  it('counts the standard’s example', () => {
    expect(countsByRange(rainflowCycles(history))).toEqual([
      { range: 3, count: 0.5 },
      { range: 4, count: 1.5 },
      { range: 6, count: 0.5 },
      { range: 8, count: 1 },
      { range: 9, count: 0.5 },
    ])
  })

  it('closes the one full cycle of the example, between −1 and 3, about a mean of 1', () => {
    expect(rainflowCycles(history).filter(({ count }) => count === 1)).toEqual([
      { range: 4, mean: 1, count: 1 },
    ])
  })

  it('counts the same however many points lie on the way between two turns', () => {
    const finer = history.flatMap((value, place) => [value, (value + (history[place + 1] ?? value)) / 2, NaN])
    expect(turningPoints(finer)).toEqual(history)
    expect(rainflowCycles(finer)).toEqual(rainflowCycles(history))
  })

  it('counts half a cycle for a history that only rises, and nothing for one that stands', () => {
    expect(rainflowCycles([0, 1, 2])).toEqual([{ range: 2, mean: 1, count: 0.5 }])
    expect(rainflowCycles([4, 4, 4])).toEqual([])
  })
})
