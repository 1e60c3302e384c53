import { describe, expect, it } from 'vitest'
import { bytesOf, copyOf } from '../../src-renderer/questions/log/file-bytes.ts'

describe('the bytes of a long file', () => {
  const text = 'a log of some length. '.repeat(220_000)

  it('are those of the file, and a copy of them is made meanwhile where it is asked for, to be given away once', async () => {
    const bytes = await bytesOf(new File([text], 'long.csv'), true)
    const [copy, another] = [await copyOf(bytes), await copyOf(bytes)]
    const same = [bytes, copy, another].map((one) => Buffer.from(text).equals(one))
    expect(same).toEqual([true, true, true])
    expect(new Set([bytes.buffer, copy.buffer, another.buffer]).size).toBe(3)
  })

  it('are asked for one piece ahead', async () => {
    const whole = new Blob([text])
    const asked: number[] = []
    const bytes = await bytesOf({
      name: 'long.csv',
      size: whole.size,
      arrayBuffer: () => whole.arrayBuffer(),
      slice: (from = 0, to = 0) => {
        asked.push(from)
        return whole.slice(from, to)
      },
    })
    expect(bytes).toHaveLength(whole.size)
    expect(asked).toEqual([0, 2 ** 21, 2 ** 22])
  })
})
