import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { commands } from '../../src-main/cli/commands.ts'
import { pitchline } from '../cli/command.ts'

/** Commands of a document: lines of its shell blocks, and code in its text and tables, without comments. */
function commandsOf(document: string): string[] {
  const text = readFileSync(document, 'utf8')
  const blocks = [...text.matchAll(/```sh\n([\s\S]*?)```/g)].flatMap(([, block]) => (block ?? '').split('\n'))
  const inline = [...text.replace(/```[\s\S]*?```/g, '').matchAll(/`([^`\n]+)`/g)].map(
    ([, code]) => code ?? '',
  )
  return [...blocks, ...inline]
    .map((line) => line.replace(/\s+#.*$/, '').trim())
    .flatMap((line) => line.split(' && '))
    .filter((line) => /^(npm|npx|node|pitchline|PITCHLINE_\w+=\S+ npx) ./.test(line))
}

const scripts = Object.keys(
  (JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> }).scripts,
)

/** Verbs of npm itself. */
const ofNpm = ['ci', 'start', 'test', 'install', 'audit', 'outdated']

describe.each(['README.md', 'DEVELOPERS.md'])('commands of %s', (document) => {
  const written = [...new Set(commandsOf(document))]

  it('are found', () => {
    expect(written.length).toBeGreaterThan(3)
  })

  it.each(written.filter((line) => line.startsWith('npm ')))('%s: the script is there', (line) => {
    const [, verb = '', name = ''] = line.split(/\s+/)
    expect(verb === 'run' ? scripts.includes(name) : ofNpm.includes(verb)).toBe(true)
  })

  const files = written.flatMap((line) =>
    [...line.matchAll(/(?:^|\s)((?:test|scripts|src-main)\/[^\s]+)/g)].map(
      ([, file]) => [line, file ?? ''] as const,
    ),
  )
  it.each(files)('%s: %s is there', (_, file) => {
    expect(existsSync(file)).toBe(true)
  })

  const ours = written.filter((line) => /^(npx )?pitchline /.test(line) && !line.includes('<'))
  it.each(ours)('%s: is understood, and does what it says', (line) => {
    const words = line.replace(/^(npx )?pitchline /, '').split(/\s+/)
    expect(commands.map(({ name }) => name)).toContain(words[0])
    if (words.length === 1 || words[0] === 'new' || words.some((word) => word.includes('…'))) return
    const { code, err } = pitchline(words)
    expect(err).toBe('')
    expect([0, 2]).toContain(code)
  })
})

it('the table of commands in README.md names every command, in the order of the help', () => {
  const named = [...readFileSync('README.md', 'utf8').matchAll(/^\| `(\w+) /gm)].map(([, name]) => name)
  expect(named).toEqual(commands.map(({ name }) => name))
})
