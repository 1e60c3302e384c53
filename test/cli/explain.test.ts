import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readBuild } from '../../shared-engine/entries/read.ts'
import { check } from '../../shared-engine/check.ts'
import { figureTable } from '../../shared-engine/figures/table.ts'
import { workingText } from '../../shared-engine/explain/text.ts'
import type { Working } from '../../shared-engine/workings/working.ts'
import { workingOf } from '../../shared-engine/explain/table.ts'
import { demoFile, demos, pitchline, untidyLines } from './command.ts'

const sled = demoFile('quick-sled-puller')

interface Numbers {
  figures: Record<string, number | null>
  limits: { id: string; margin: number | null }[]
}

test.each(['topSpeedMps', 'toothShearPa', 'freeRpm'])(
  'explain %s ends in the number that check prints',
  (name) => {
    const { code, out, err } = pitchline(['explain', sled, name, '--json'])
    expect({ code, err }).toEqual({ code: 0, err: '' })
    const { figures } = JSON.parse(pitchline(['check', sled, '--json']).out) as Numbers
    const working = JSON.parse(out) as Working
    expect(working.subject).toBe(name)
    expect(working.steps.at(-1)?.value).toBe(figures[name])
  },
)

test('explain of a limit ends in its margin and names formula, state and source', () => {
  const { code, out } = pitchline(['explain', sled, 'track.tooth-shear'])
  expect(code).toBe(0)
  expect(untidyLines(out)).toEqual([])
  const { limits } = JSON.parse(pitchline(['check', sled, '--json']).out) as Numbers
  const margin = limits.find(({ id }) => id === 'track.tooth-shear')?.margin ?? NaN
  const printed = [...out.matchAll(/^ {6}= (-?[\d.]+)$/gm)].at(-1)?.[1]
  // 1e-6: workings are printed in seven figures.
  expect(Math.abs(Number(printed) - margin)).toBeLessThan(1e-6)
  expect(out).toMatch(/^State: launch: /m)
  expect(out).toMatch(/^Source: /m)
})

test('a limit that waits for entries says which', () => {
  const { code, out } = pitchline(['explain', sled, 'vehicle.pivot-turn'])
  expect(code).toBe(0)
  expect(out.replace(/\s+/g, ' ')).toContain('vehicle.gaugeMm')
})

test('names that are not known are refused in one line, near ones offered', () => {
  expect(pitchline(['explain', sled, 'toothshear']).err).toBe(
    `${sled}: there is no figure or limit toothshear; allowed: toothShearPa, track.tooth-shear, track.tooth-shear-lasts.\n`,
  )
  const unknown = pitchline(['explain', sled, 'x\u001b[31m'])
  expect(unknown.code).toBe(1)
  expect(untidyLines(unknown.err.replace(sled, '').replace(/;.*/, ''))).toEqual([])
})

describe.each(demos)('every working of %s', (demo) => {
  const build = readBuild(readFileSync(demoFile(demo)))
  if (!build.ok) throw new Error(`${demo} is no build`)
  const checked = check(build.value)
  const subjects = [...figureTable.map(({ name }) => name), ...checked.limits.map(({ id }) => id)]

  test.each(subjects)('%s fits the page and shows no number that is none', (subject) => {
    const working = workingOf(checked, subject)
    const text = working === null ? '' : workingText(working)
    expect(text).not.toBe('')
    expect(untidyLines(text)).toEqual([])
    expect(text).not.toMatch(/NaN|Infinity|undefined/)
  })
})
