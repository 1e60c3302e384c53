import { describe, expect, it } from 'vitest'
import { check } from '../../shared-engine/check.ts'
import { compare } from '../../shared-engine/compare/compare.ts'
import { machinePicture } from '../../shared-engine/draw/machine-picture.ts'
import { pictureSize, pictureSvg } from '../../shared-engine/draw/picture.ts'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import { wordsBelow } from '../../src-renderer/plots/export.ts'
import { limitsText } from '../../src-renderer/limits/limits-text.ts'
import { comparisonText } from '../../src-renderer/questions/side/comparison-text.ts'
import { simpleBuild } from '../fixtures/build/plain.ts'

const stored = { ...simpleBuild(), name: 'Plain & simple' }
const checked = check(completeBuild(stored))

describe('words that go along', () => {
  it('are columns between tabs: every limit a line of as many cells as the heading', () => {
    const lines = limitsText(checked.limits, 'metric').trimEnd().split('\n')
    expect(lines).toHaveLength(checked.limits.length + 1)
    expect(new Set(lines.map((line) => line.split('\t').length))).toEqual(new Set([6]))
    const standings = lines.slice(1).map((line) => line.split('\t').at(-1))
    expect(standings).toEqual(checked.limits.map(({ standing }) => standing))
  })

  it('have a column for each build compared, and what differs first', () => {
    const other = { ...stored, name: 'Other', vehicle: { ...stored.vehicle, massKg: 12_345 / 1000 } }
    const lines = comparisonText(compare([stored, other]), ['A', 'B'], 'metric')
      .trimEnd()
      .split('\n')
    expect(lines[0]).toBe('\tA\tB')
    expect(lines[1]).toMatch(/mass.*\t12\.345 kg$/i)
    expect(new Set(lines.map((line) => line.split('\t').length))).toEqual(new Set([3]))
  })
})

describe('a picture', () => {
  const scene = machinePicture(checked, 'metric')
  const below = wordsBelow(stored.name, new Date(2026, 10, 28))
  const svg = pictureSvg(scene, { title: scene.title, below, face: 'data:font/woff2;base64,AAAA' })

  it('says what it shows, of which machine, when and by what, and fetches nothing', () => {
    expect(below).toBe('Plain & simple, 28 November 2026. Computed by Pitchline: an estimate.')
    expect(svg).toContain('>Plain &amp; simple, 28 November 2026. Computed by Pitchline: an estimate.</text>')
    expect(svg).toMatch(/<text[^>]* font-weight="600"[^>]*>Plain &amp; simple<\/text>/)
    const addresses = [...svg.matchAll(/(?:url|href)[(=]['"]?([^'")#][^'")]*)/g)].map(
      ([, address]) => address,
    )
    expect(addresses).toEqual(['data:font/woff2;base64,AAAA'])
  })

  it('leaves room at every edge, and has the figures of each part', () => {
    const size = pictureSize(scene)
    expect(size.width).toBeGreaterThan(scene.width + 20)
    expect(size.height).toBeGreaterThan(scene.height + 40)
    expect(svg).toContain(`width="${size.width}" height="${size.height}"`)
    expect(svg).toMatch(/>[\d,.]+.rpm<\/text>/)
  })
})
