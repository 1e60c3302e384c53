import { expect, it } from 'vitest'
import { withEnding } from '../../src-main/files/ending.ts'

it('a name that was typed without an ending gets the one of its kind, where that name is free', () => {
  const free = () => false
  expect(withEnding('/hut/sled', '.build.json', free)).toBe('/hut/sled.build.json')
  expect(withEnding('/hut/sled.build.json', '.build.json', free)).toBe('/hut/sled.build.json')
  expect(withEnding('/hut/sled.json', '.build.json', free)).toBe('/hut/sled.json')
  expect(withEnding('/hut.old/plot', '.svg', free)).toBe('/hut.old/plot.svg')
  // Nobody was asked whether that one may be overwritten.
  expect(withEnding('/hut/sled', '.build.json', (file) => file === '/hut/sled.build.json')).toBe('/hut/sled')
})
