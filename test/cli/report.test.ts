import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { demoFile, demos, pitchline, temporaryFolder } from './command.ts'

const folder = temporaryFolder()
const inFolder = (name: string) => path.join(folder(), name)

describe('pitchline report', () => {
  it.each(demos)('%s: prints Markdown, with the exit code of check', (name) => {
    const report = pitchline(['report', demoFile(name), '--date', '2031-02-03'])
    expect(report.err).toBe('')
    expect(report.code).toBe(pitchline(['check', demoFile(name)]).code)
    expect(report.out).toMatch(/^# .+\n\nPitchline, model version \d+ · metric units · 2031-02-03\n/)
  })

  it('writes a page of HTML for the paper, once', () => {
    const file = inFolder('sheet.html')
    const words = ['report', demoFile('hut-hauler'), '-o', file, '--paper', 'letter', '--units', 'imperial']
    expect(pitchline(words)).toMatchObject({ code: 0, err: '', out: `${file} written\n` })
    const html = readFileSync(file, 'utf8')
    expect(html).toContain('@page { size: Letter;')
    expect(html).toContain('imperial units')
    const again = pitchline(words)
    expect(again.code).toBe(1)
    expect(again.err).toContain('sheet.html')
    expect(again.err).toMatch(/exists|a file of this name/)
    expect(readFileSync(file, 'utf8')).toBe(html)
    expect(readdirSync(folder())).toEqual(['sheet.html'])
  })

  it('refuses a name that says no form before it looks at anything else', () => {
    const { code, err, out } = pitchline(['report', 'no-such.json', '-o', inFolder('sheet.doc')])
    expect({ code, out }).toEqual({ code: 1, out: '' })
    expect(err).toMatch(/sheet\.doc.*\.pdf, \.html or \.md/s)
    expect(existsSync(inFolder('sheet.doc'))).toBe(false)
  })

  it('leaves nothing where the folder is missing or the build cannot be read', () => {
    const missing = pitchline(['report', demoFile('hut-hauler'), '-o', inFolder('none/sheet.md')])
    expect(missing.code).toBe(1)
    expect(missing.err).toContain('there is no such folder')
    writeFileSync(inFolder('broken.json'), '{')
    const broken = pitchline(['report', inFolder('broken.json'), '-o', inFolder('broken.md')])
    expect(broken.code).toBe(1)
    expect(existsSync(inFolder('broken.md'))).toBe(false)
  })
})
