import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { glossaryPage, wordsExplained } from '../../../shared-engine/explain/glossary.ts'
import { glossary } from '../../../shared-engine/reference/glossary.ts'
import { filesBelow } from '../../house/sources-of.ts'

it('a text is cut at the words explained, whole words alone, each at its first place', () => {
  expect(
    wordsExplained('More slip, less grip, more SLIP; slippery').map(({ text, term }) => [text, term]),
  ).toEqual([
    ['More ', null],
    ['slip', 'slip'],
    [', less ', null],
    ['grip', 'grip'],
    [', more SLIP; slippery', null],
  ])
  expect(wordsExplained('A torque limiter').map(({ term }) => term)).toEqual([null, 'limiter'])
  // In a list, a word is explained in the first row that has it.
  const said = new Set<string>()
  const rows = ['Loop pull', 'What the loop weighs, and its slip', 'Slip of the loop'].map((row) =>
    wordsExplained(row, said).flatMap(({ term }) => term ?? []),
  )
  expect(rows).toEqual([['loop'], ['slip'], []])
  const parts = fc.array(fc.oneof(fc.string(), fc.constantFrom(...glossary.flatMap(({ forms }) => forms))))
  fc.assert(
    fc.property(parts, (some) => {
      const text = some.join(' ')
      expect(
        wordsExplained(text)
          .map((stretch) => stretch.text)
          .join(''),
      ).toBe(text)
    }),
  )
})

it('each word is explained once, in a sentence, and stands in the words of the program', () => {
  const terms = glossary.map(({ term }) => term.toLowerCase())
  expect(new Set(terms).size).toBe(terms.length)
  const forms = glossary.flatMap((one) => one.forms.map((form) => form.toLowerCase()))
  expect(new Set(forms).size, 'no form belongs to two terms').toBe(forms.length)
  const said = ['shared-engine', 'src-renderer']
    .flatMap((folder) => filesBelow(folder, ['.ts', '.svelte']))
    .filter((file) => !file.includes('glossary'))
    .map((file) => readFileSync(file, 'utf8').toLowerCase())
    .join('\n')
  for (const { term, forms: known, means } of glossary) {
    expect(means, term).toMatch(/^[A-Z].*\.$/)
    expect(means.length, term).toBeLessThan(220)
    expect(
      known.some((form) => said.includes(form.toLowerCase())),
      `${term} is said nowhere`,
    ).toBe(true)
  }
})

it('the page of the documents is this list', () => {
  expect(readFileSync('docs/glossary.md', 'utf8'), 'node scripts/run.js glossary').toBe(glossaryPage())
})
