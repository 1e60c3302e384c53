import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { modelVersion } from '../../shared-engine/constants.ts'
import { commands } from '../../src-main/cli/commands.ts'
import { pitchline, root, untidyLines } from './command.ts'

test('--version is that of the package and of the model', () => {
  const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { version: string }
  expect(pitchline(['--version'])).toEqual({
    code: 0,
    out: `${version}, model version ${modelVersion}\n`,
    err: '',
  })
})

test('--help lists every command and the exit codes', () => {
  const { code, out, err } = pitchline(['--help'])
  expect({ code, err }).toEqual({ code: 0, err: '' })
  for (const { name } of commands) expect(out).toMatch(new RegExp(`^  ${name} `, 'm'))
  expect(out).toContain('Exit codes: 0 nothing is over its limit, 2 something is, 1 the build')
  expect(untidyLines(out)).toEqual([])
})

test('without a command the help stands on stderr, with exit code 1', () => {
  const { code, out, err } = pitchline([])
  expect({ code, out }).toEqual({ code: 1, out: '' })
  expect(err).toBe(pitchline(['--help']).out)
})

describe.each(commands.map(({ name }) => name))('%s --help', (name) => {
  test('shows every argument and option and fits the page', () => {
    const command = commands.find((one) => one.name === name)
    const { code, out, err } = pitchline([name, '--help'])
    expect({ code, err }).toEqual({ code: 0, err: '' })
    for (const argument of command?.arguments ?? [])
      expect(out).toContain(`  ${argument.name.replace('...', '')} `)
    for (const option of command?.options ?? []) expect(out).toContain(option.flags)
    expect(out).toContain('Example')
    expect(untidyLines(out)).toEqual([])
    expect(pitchline(['help', name]).out).toBe(out)
  })
})
