import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

/**
 * *Source:* WCAG 2.2, relative luminance and contrast ratio; success criteria 1.4.3 (text 4.5:1) and 1.4.11 (graphics
 * 3:1).
 */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(one: string, other: string): number {
  const [low = 0, high = 0] = [luminance(one), luminance(other)].toSorted((a, b) => a - b)
  return (high + 0.05) / (low + 0.05)
}

const css = readFileSync('src-renderer/styles/tokens.css', 'utf8')

function tokensOf(selector: string): Map<string, string> {
  const block = css.slice(css.indexOf(selector))
  const body = block.slice(0, block.indexOf('}'))
  return new Map(
    [...body.matchAll(/--([a-z0-9-]+): (#[0-9a-f]{6});/g)].map(([, name = '', value = '']) => [name, value]),
  )
}

const themes = { light: tokensOf(':root {'), dark: tokensOf(":root[data-theme='dark'] {") }

describe.each(Object.entries(themes))('the %s theme', (_, tokens) => {
  const at = (name: string) => tokens.get(name) ?? '#808080'

  it.each(['ink', 'quiet', 'accent', 'near', 'over', 'assumed'])(
    'sets text in %s at 4.5:1 or more on paper',
    (name) => {
      expect(contrast(at(name), at('paper'))).toBeGreaterThanOrEqual(4.5)
    },
  )

  it.each([
    ['ink', 'accent-wash'],
    ['ink', 'near-wash'],
    ['ink', 'over-wash'],
    ['near', 'near-wash'],
    ['over', 'over-wash'],
    ['quiet', 'paper-sunk'],
    ['on-accent', 'accent'],
  ])('sets text in %s at 4.5:1 or more on %s', (text, ground) => {
    expect(contrast(at(text), at(ground))).toBeGreaterThanOrEqual(4.5)
  })

  it.each(['edge', 'series-1', 'series-2', 'series-3', 'series-4', 'series-5', 'series-6'])(
    'draws %s at 3:1 or more',
    (name) => {
      expect(contrast(at(name), at('paper'))).toBeGreaterThanOrEqual(3)
    },
  )
})

it('gives both ways to the dark theme the same colours', () => {
  expect([...tokensOf(":root:not([data-theme='light']) {")]).toEqual([...themes.dark])
})
