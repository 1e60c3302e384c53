import { output, type GuidedTest } from '../kind.ts'

/**
 * Capacity of the whole pack from what came out between two states of charge.
 *
 * *Source:* discharge capacity as in IEC 61960-3.
 */
export const packCapacity: GuidedTest = {
  id: 'pack-capacity',
  outputs: (bench) => {
    const mAh = bench.mean('dischargedMah')
    const from = bench.plain('fromPercent')
    const to = bench.plain('toPercent')
    return {
      capacity: output((mAh * 100) / (from - to), '100 * Q / (from - to)', { Q: mAh, from, to }),
    }
  },
}
