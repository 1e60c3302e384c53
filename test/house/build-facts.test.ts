import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { buildFacts } from '../../scripts/build-facts.ts'

const folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-facts-'))
afterAll(() => rmSync(folder, { recursive: true }))

const git = (...words: string[]) => execFileSync('git', words, { cwd: folder, encoding: 'utf8' }).trim()
/** A fresh machine may have no git: a build is then said to be made of no commit, as the others see. */
const hasGit = spawnSync('git', ['--version']).status === 0
const commitOf = (root: string) => buildFacts(root)['__PITCHLINE_COMMIT__']

describe('what a build is said to be made from', () => {
  const manifest = JSON.stringify({ version: '1.2.3' })
  writeFileSync(path.join(folder, 'package.json'), manifest)

  it('is the version, and no commit where there is no history', () => {
    expect(buildFacts(folder)).toEqual({ __PITCHLINE_VERSION__: '"1.2.3"', __PITCHLINE_COMMIT__: '""' })
  })

  it.skipIf(!hasGit)('is the commit in a clone, told apart where files were changed since', () => {
    git('init', '-q')
    git('add', 'package.json')
    git('-c', 'user.name=demo', '-c', 'user.email=demo@pitchline.example', 'commit', '-q', '-m', 'demo')
    const commit = git('rev-parse', '--short', 'HEAD')
    expect(commitOf(folder)).toBe(`"${commit}"`)
    writeFileSync(path.join(folder, 'package.json'), `${manifest}\n`)
    expect(commitOf(folder)).toBe(`"${commit}, with changes"`)
  })

  it('is no commit of another project that a copy lies in', () => {
    const inner = path.join(folder, 'copy')
    mkdirSync(inner)
    writeFileSync(path.join(inner, 'package.json'), manifest)
    expect(commitOf(inner)).toBe('""')
  })
})
