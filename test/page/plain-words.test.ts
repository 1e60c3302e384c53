import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { filesBelow } from '../house/sources-of.ts'

// Words that people who tried the window stumbled over, and what stands there now: one verb for each deed, one name for
// each thing. Looked for in whatever the sources could show, comments aside.

const dropped: readonly (readonly [RegExp, string])[] = [
  [/is what holds it/i, 'limits it'],
  [/\bnine times in ten\b|\b9 in 10\b/i, '90 % range'],
  [/known twice as well/i, 'halving its tolerance'],
  [/beaten by none|spread over the front/i, 'the best of both aims'],
  [/\bthe book misses\b/i, 'nothing'],
  [/\bhangs? on these\b|\blean on\b/i, 'rests on'],
  [/\bin force: /i, 'Kept: '],
  [/\btake back:|\btake back what\b|\bput back\b/i, 'Undo'],
  [/\bleave out\b|\btake out\b|\btakes the row out\b|\bthrow away\b/i, 'remove'],
  [/\b(three|four|five) is the most\b/i, 'at most'],
  [/\btoday \$?\{/i, 'now'],
  [/\bpast any\b/i, 'exceeded'],
  [/>\s*(settle|begin|understood)\s*</i, 'a verb for what it does'],
  [/\bno limit is passed\b/i, 'none of the limits watched, where others may be over'],
  [/grip does not help/i, 'grip does not limit it'],
]

/** What of a source may come on a screen: no comments, no notes for programmers. */
const withoutComments = (text: string) =>
  text
    .replaceAll(/<!--[\s\S]*?-->/g, '')
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/^\s*\/\/.*$|\s\/\/ .*$/gm, '')

const wordsIn = (text: string): string[] =>
  dropped.flatMap(([words, instead]) => {
    const found = words.exec(withoutComments(text))
    return found === null ? [] : [`“${found[0]}”; say: ${instead}`]
  })

describe('plain words', () => {
  it('are what the sources of window, engine and command line say', () => {
    const files = ['src-renderer', 'shared-engine', 'src-main'].flatMap((folder) =>
      filesBelow(folder, ['.ts', '.svelte', '.json']),
    )
    expect(files.length).toBeGreaterThan(300)
    expect(
      files.flatMap((file) => wordsIn(readFileSync(file, 'utf8')).map((one) => `${file}: ${one}`)),
    ).toEqual([])
  })

  it('are missed where one of the others comes back, and not in a comment', () => {
    expect(wordsIn('<button>Take back: {name}</button>')).toHaveLength(1)
    expect(wordsIn('label: `leave out ${name}`')).toHaveLength(1)
    expect(wordsIn('/** What to leave out. */ const a = 1 // take out')).toEqual([])
  })
})
