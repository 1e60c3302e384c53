import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { check, completeBuild, readStoredBuildText } from '../../shared-engine/index.ts'
import { findables, found } from '../../src-renderer/frame/find-list.ts'

const text = readFileSync(new URL('../../examples/quick-sled-puller.build.json', import.meta.url), 'utf8')
const read = readStoredBuildText(text)
if (!read.ok) throw new Error('the demo cannot be read')
const all = findables(read.value, check(completeBuild(read.value)))
const ids = (typed: string) => found(all, typed, 9).map(({ id }) => id)

describe('what is found by name', () => {
  it('is an entry by the first letters of its words, in any order and case', () => {
    expect(ids('kv')[0]).toBe('motor.kvRpmPerVolt')
    expect(ids('SPROCKET teeth')).toContain('track.sprocketTeeth')
  })

  it('is told apart by its part', () => {
    expect(ids('driver’s teeth reduction 2')).toEqual(['stages.1.driverTeeth'])
  })

  it('is a limit and a figure too, and nothing that this build has not', () => {
    expect(ids('running free')).toContain('motor.free-rpm')
    expect(ids('free-running')).toContain('freeRpm')
    expect(ids('radiator')).toEqual([]) // no liquid cooling
    expect(ids('  ')).toEqual([])
  })
})
