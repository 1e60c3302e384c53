import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { newBuild } from '../../shared-engine/assume/start.ts'
import { fieldPatterns } from '../../shared-engine/entries/fields.ts'
import { writeBuild } from '../../shared-engine/entries/write.ts'
import { pitchline, temporaryFolder, untidyLines } from './command.ts'

const folder = temporaryFolder()
const contentOf = (name: string) => readFileSync(path.join(folder(), name), 'utf8')

test('new writes a build that checks without anything over, and a page that names every entry', () => {
  const { code, out, err } = pitchline(['new', 'first'], undefined, folder())
  expect({ code, err }).toEqual({ code: 0, err: '' })
  expect(out).toContain('first.build.json written')
  expect(pitchline(['check', 'first.build.json'], undefined, folder()).code).toBe(0)
  const page = contentOf('first.entries.txt')
  for (const pattern of fieldPatterns) expect(page).toContain(`\n${pattern}\n`)
  expect(untidyLines(page)).toEqual([])
})

test('new begins with the machine that the window begins with, whatever it is called', () => {
  expect(pitchline(['new', 'second'], undefined, folder()).code).toBe(0)
  const begun = JSON.parse(contentOf('second.build.json')) as Record<string, unknown>
  const window = JSON.parse(writeBuild(newBuild())) as Record<string, unknown>
  for (const build of [begun, window]) for (const own of ['name', 'notes']) delete build[own]
  expect(Object.keys(begun).length).toBeGreaterThan(5)
  expect(begun).toEqual(window)
})

test('new never overwrites, neither the build nor the page', () => {
  writeFileSync(path.join(folder(), 'mine.json'), 'precious')
  expect(pitchline(['new', 'mine.json'], undefined, folder())).toEqual({
    code: 1,
    out: '',
    err: 'mine.json: a file of this name exists already and is not overwritten; allowed: another name.\n',
  })
  expect(contentOf('mine.json')).toBe('precious')
  writeFileSync(path.join(folder(), 'yours.entries.txt'), 'precious too')
  expect(pitchline(['new', 'yours'], undefined, folder()).code).toBe(1)
  expect(contentOf('yours.entries.txt')).toBe('precious too')
  expect(() => contentOf('yours.build.json')).toThrow()
})

test('new into a folder that is not there says so', () => {
  expect(pitchline(['new', 'nowhere/mine'], undefined, folder()).err).toBe(
    'nowhere/mine.build.json: the file cannot be written: there is no such folder.\n',
  )
})
