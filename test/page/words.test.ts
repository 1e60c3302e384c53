import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import { check } from '../../shared-engine/check.ts'
import { figureTable } from '../../shared-engine/figures/table.ts'
import { workingText } from '../../shared-engine/explain/text.ts'
import { workingOf } from '../../shared-engine/explain/table.ts'
import { checkedText } from '../../src-main/cli/check/text.ts'
import { marginWords } from '../../shared-engine/limits/margin-words.ts'
import { numberTex } from '../../src-renderer/limits/typeset.ts'
import { anyBuild } from '../fixtures/build/any.ts'
import { oddIn } from '../fixtures/text/odd.ts'

// The page itself is read in test/window/words.browser.spec.ts, for few builds; here are many, in the words that the page
// and the command line have in common.

const checked = anyBuild.map((stored) => check(completeBuild(stored)))

describe('words about builds from anywhere in the ranges', () => {
  it('hold no odd number in figures and limits', () => {
    fc.assert(
      fc.property(checked, fc.constantFrom('metric', 'imperial'), (one, system) => {
        const lines = checkedText(one, system).split('\n')
        expect(lines.flatMap((line) => oddIn(line))).toEqual([])
        expect(one.limits.flatMap(({ margin }) => oddIn(marginWords(margin)))).toEqual([])
      }),
      { numRuns: 100, endOnFailure: true },
    )
  })

  it('nor in workings, whose numbers have seven figures so that they can be redone', () => {
    fc.assert(
      fc.property(checked, (one) => {
        const subjects = [...figureTable.map(({ name }) => name), ...one.limits.map(({ id }) => id)]
        for (const subject of subjects) {
          const working = workingOf(one, subject)
          if (working === null) continue
          // A formula with numbers put in may well say -0: it takes what stands behind it away.
          expect(oddIn(workingText(working), 7).filter((odd) => odd !== '-0')).toEqual([])
          expect(working.steps.flatMap(({ value }) => oddIn(numberTex(value)))).toEqual([])
        }
      }),
      { numRuns: 25, endOnFailure: true },
    )
  })
})
