import { expect, it, vi } from 'vitest'
import { randomStream } from '../../shared-engine/numeric/random.ts'
import { commands } from '../../src-main/cli/commands.ts'
import { runCommandLine } from '../../src-main/cli/program.ts'
import { belowOf, fuzzed, seedsOf } from './spoil.ts'

// Command lines put together at random from what people type and what nobody types. No file is there to be read, so that
// nothing is computed: the command line has to be refused in one line, or to print its help.

vi.stubGlobal('__PITCHLINE_VERSION__', '0')

const words = [
  ...commands.map(({ name }) => name),
  ...[
    'help',
    'chek',
    '',
    ' ',
    '--',
    '--json',
    '--units',
    'imperial',
    'furlongs',
    '--seed',
    '--samples',
    '-h',
  ],
  ...['--workers', '0', '-1', '1e999', 'NaN', '12', '999999999999999999999', 'none.build.json', 'none/none'],
  ...['vehicle.massKg', '__proto__', 'track.sprocketTeeth', '\u001b[2J', '\u202e', '\u0000', 'é'.repeat(300)],
  ...['--nothing=1', '--json=3', '-x', '-xyz', '=', '=1+1', '🦫'],
]

it(
  `${fuzzed} command lines at random are refused in a sentence, or print a help`,
  async () => {
    const troubles: string[] = []
    for (const seed of seedsOf(fuzzed)) {
      const below = belowOf(randomStream(seed, 11))
      const line = Array.from({ length: below(6) }, () => words[below(words.length)] ?? '')
      // It would make a file of any name.
      if (line.includes('new')) continue
      const said = { out: '', err: '' }
      const io = {
        out: (text: string) => void (said.out += text),
        err: (text: string) => void (said.err += text),
      }
      try {
        const code = await runCommandLine(line, commands, '0', io)
        const isHelp = code === 0 && said.err === '' && said.out !== ''
        const isUsage = line.every((word) => word === '') || line.length === 0 || line.includes('help')
        const isRefused =
          code === 1 && (/^[^\n]+: [^\n]+\.\n/.test(said.err) || (isUsage && said.err.startsWith('Usage')))
        if (!isHelp && !isRefused) troubles.push(`${JSON.stringify(line)}: ${code}, ${JSON.stringify(said)}`)
      } catch (thrown) {
        troubles.push(`${JSON.stringify(line)}: ${String(thrown)}`)
      }
    }
    expect(troubles).toEqual([])
  },
  60_000 + 100 * fuzzed,
)
