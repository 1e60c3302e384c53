import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { commands } from '../../src-main/cli/commands.ts'
import { packed, unpacked } from '../../src-main/cli/parts/plain.ts'
import { runCommandLine } from '../../src-main/cli/program.ts'
import { demoFile, temporaryFolder } from './command.ts'

// Several computers share a run: what they found, put together, is the answer of one run, letter by letter. In this very
// process, since a thread each would only cost its start; `search.test.ts` has the same on threads.

const folder = temporaryFolder()

interface Said {
  readonly code: number
  readonly out: string
  readonly err: string
}

async function pitchline(...words: readonly string[]): Promise<Said> {
  const said = { out: '', err: '' }
  const io = {
    out: (text: string) => void (said.out += text),
    err: (text: string) => void (said.err += text),
  }
  return { code: await runCommandLine(words, commands, '0', io), ...said }
}

/** A run divided into parts, each in a file. */
async function partsOf(name: string, words: readonly string[], of: number): Promise<string[]> {
  const files: string[] = []
  for (let number = 1; number <= of; number += 1) {
    const { code, out, err } = await pitchline(...words, '--part', `${number}/${of}`)
    expect({ code, err }).toEqual({ code: 0, err: '' })
    const file = path.join(folder(), `${name}-${number}-of-${of}.part`)
    writeFileSync(file, out)
    files.push(file)
  }
  return files
}

/** An order that is neither theirs nor its reverse. */
const shuffled = <T>(list: readonly T[]): T[] => list.map((_, at) => list[(at * 5 + 3) % list.length] as T)

function spaceFile(name: string, aim: unknown): string {
  const file = path.join(folder(), `${name}.space.json`)
  const vary = {
    'track.sprocketTeeth': { from: 8, to: 12, step: 1 },
    'pack.series': [4, 5, 6, 8],
    'controller.throttleCapPercent': { from: 60, to: 100, step: 10 },
  }
  const hold = { figures: [{ figure: 'topSpeedMps', atLeast: '20 km/h' }] }
  writeFileSync(file, JSON.stringify({ format: 'pitchline-space', version: 1, vary, aim, hold, keep: 6 }))
  return file
}

const alone = ['--workers', '1']
const stoat = demoFile('quick-sled-puller')
const newt = demoFile('culvert-crawler')
const fast = { figure: 'topSpeedMps', best: 'most' }
const mild = { figure: 'toothShearPa', best: 'least' }

const counts = [1, 2, 7, 16]

/** All counts for one of the runs; how ranges are cut is the same for the others. */
const countsOf = (name: string) => (name === 'a search with one aim' ? counts : [7])

const runs: Readonly<Record<string, () => string[]>> = {
  'a search with one aim': () => ['search', stoat, spaceFile('one', fast), ...alone],
  'a search with a front': () => ['search', stoat, spaceFile('front', [fast, mild]), ...alone],
  'a search in which nothing holds': () => {
    const file = spaceFile('nothing', fast)
    const space = JSON.parse(readFileSync(file, 'utf8')) as object
    const hold = { figures: [{ figure: 'topSpeedMps', atLeast: '300 km/h' }] }
    writeFileSync(file, JSON.stringify({ ...space, hold }))
    return ['search', stoat, file, ...alone]
  },
  'an uncertainty': () => ['uncertainty', newt, '--samples', '60', '--seed', '5', ...alone],
}

describe.each(Object.entries(runs))('%s', (name, words) => {
  test(`in ${countsOf(name).join(', ')} parts in any order is that of one run to the bit`, async () => {
    const whole = await pitchline(...words(), '--json')
    expect(whole.out.length).toBeGreaterThan(500)
    for (const of of countsOf(name)) {
      const files = await partsOf(name, words(), of)
      expect(await pitchline('merge', ...shuffled(files), '--json')).toEqual(whole)
    }
  })
})

test('a sweep in parts is that of one run, crossings across its parts too', async () => {
  const words = ['sweep', newt, 'stages.1.faceWidthMm', '6', '14', '9']
  for (const of of counts) {
    const files = await partsOf('sweep', words, of)
    for (const form of ['--json', '--csv', '--units=imperial']) {
      expect(await pitchline('merge', ...shuffled(files), form)).toEqual(await pitchline(...words, form))
    }
    expect((await pitchline('merge', ...files)).out).toContain('Limits crossed:')
  }
})

describe('what makes no whole is refused by name', () => {
  const few = ['uncertainty', newt, '--samples', '40']
  const refusal = async (...files: readonly string[]) => {
    const { code, out, err } = await pitchline('merge', ...files)
    expect({ code, out }).toEqual({ code: 1, out: '' })
    return err.replaceAll(`${folder()}/`, '')
  }

  test('a missing part, and one that is there twice', async () => {
    const [one = '', two = '', three = ''] = await partsOf('gap', few, 3)
    expect(await refusal(three)).toBe('pitchline: parts are missing: 1, 2 of 3.\n')
    expect(await refusal(one, three)).toBe('pitchline: parts are missing: 2 of 3.\n')
    expect(await refusal(one, two, three, two)).toBe(
      'gap-2-of-3.part: part 2/3 was there already; remove this one or gap-2-of-3.part.\n',
    )
  })

  test('parts of another seed, count, build or command', async () => {
    const [one = ''] = await partsOf('mine', few, 2)
    const [, seed = ''] = await partsOf('seed', [...few, '--seed', '9'], 2)
    const [, build = ''] = await partsOf('build', ['uncertainty', stoat, '--samples', '60'], 2)
    const [, count = ''] = await partsOf('count', few, 3)
    const [, search = ''] = await partsOf('search', ['search', stoat, spaceFile('small', fast)], 2)
    const other = 'the part is of another run than mine-1-of-2.part:'
    expect(await refusal(one, seed)).toBe(`seed-2-of-2.part: ${other} seed 9 instead of 1.\n`)
    expect(await refusal(one, build)).toBe(
      `build-2-of-2.part: ${other} another build; samples 60 instead of 40.\n`,
    )
    expect(await refusal(one, count)).toBe(`count-2-of-3.part: ${other} count of parts 3 instead of 2.\n`)
    expect(await refusal(one, search)).toBe(`search-2-of-2.part: ${other} search instead of uncertainty.\n`)
  })

  test('a file cut short, changed, empty, of another kind, or not there', async () => {
    const [one = '', two = ''] = await partsOf('whole', few, 2)
    const text = readFileSync(two, 'utf8')
    const at = path.join(folder(), 'at.part')
    const says = async (content: string) => {
      writeFileSync(at, content)
      return refusal(one, at)
    }
    const damaged = 'at.part: the part is not as it was printed: it has'
    expect(await says(text.slice(0, -20))).toContain(`${damaged} no end`)
    expect(await says(text.replace('"number": 2', '"number": 1'))).toContain(`${damaged} other content`)
    expect(await says('')).toContain(`${damaged} nothing`)
    expect(await says('{}')).toContain('the file is something else: this is not a part of a divided run')
    expect(await refusal(one, newt)).toContain('the file is "pitchline-build": this is not a part')
    expect(await refusal(one, path.join(folder(), 'gone.part'))).toContain('there is no file of this name')
  })

  test('a part that there cannot be', async () => {
    for (const part of ['0/2', '3/2', '1/0', '1', '1/2/3', '-1/2', '1/1000000']) {
      const { code, err } = await pitchline(...few, '--part', part)
      expect(code).toBe(1)
      expect(err).toBe(
        `pitchline: --part is "${part}"; allowed: k/n, as 3/16: the k-th of n parts, n up to 100,000.\n`,
      )
    }
  })
})

test('numbers that JSON lacks, and typed lists, come back to the bit', () => {
  const odd = [NaN, Infinity, -Infinity, -0, 0, 5e-324, 0.1, 2 ** 53]
  const data = {
    odd,
    list: Float64Array.from(odd),
    counts: Uint32Array.of(0, 2 ** 32 - 1),
    flags: Uint8Array.of(0, 255),
    none: null,
    text: '$list',
  }
  expect(unpacked(JSON.parse(JSON.stringify(packed(data))))).toStrictEqual(data)
})
