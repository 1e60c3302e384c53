import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { pictures } from '../../scripts/pictures.ts'
import { filesBelow, projectFiles } from './sources-of.ts'

const files = projectFiles()

const documents = files.filter((file) => file.endsWith('.md'))

const model = readFileSync('docs/model.md', 'utf8')
const sections = new Set([...model.matchAll(/^## (\d+) /gm)].map(([, number]) => number))

describe('§', () => {
  const code = ['shared-engine', 'src-main', 'src-renderer', 'test', 'scripts'].flatMap((folder) =>
    filesBelow(folder, ['.ts', '.svelte', '.md']),
  )
  // lines of a comment may break between the file's name and the sign
  const cited = code.flatMap((file) =>
    [
      ...readFileSync(file, 'utf8').matchAll(
        /docs\/model\.md`?(?:\s|\*)*§§?\s?(\d+)(?:(?: (?:to|and)|,)(?:\s|\*)+§?(\d+))*/g,
      ),
    ].flatMap(([, ...numbers]) =>
      numbers.filter((one) => one !== undefined).map((number) => [file, number] as const),
    ),
  )

  it('stands in many docstrings', () => {
    expect(cited.length).toBeGreaterThan(60)
  })

  it('names a section of docs/model.md wherever it stands', () => {
    expect(cited.filter(([, number]) => !sections.has(number))).toEqual([])
  })

  it('names it by nothing but that document', () => {
    const loose = code
      .filter((file) => file.endsWith('.ts') && file.startsWith('shared-engine/'))
      .flatMap((file) =>
        readFileSync(file, 'utf8')
          .split('\n')
          .filter((line) => /\bcontract\b/.test(line))
          .map((line) => `${file}: ${line.trim()}`),
      )
    expect(loose).toEqual([])
  })

  it('inside the document names a section too', () => {
    const inside = [...model.matchAll(/§(\d+)/g)].map(([, number]) => number)
    expect(inside.filter((number) => !sections.has(number ?? ''))).toEqual([])
  })
})

const tops = [
  'shared-engine',
  'src-main',
  'src-renderer',
  'test',
  'scripts',
  'docs',
  'examples',
  '.ci',
  'assets',
]

/** Whether a path that may hold `*`, `<name>` or `{a,b}` names at least one file or folder of the project. */
function isThere(written: string): boolean {
  const plain = written.replace(/[/]$/, '')
  if (existsSync(plain)) return true
  if (!/[*<{]/.test(plain)) return false
  const pattern = plain
    .replace(/[.+^$()|[\]\\]/g, '\\$&')
    .replace(/<[^>]+>|\*+/g, '[^/]*')
    .replace(/\{([^}]+)\}/g, (_, inside: string) => `(${inside.split(',').join('|')})`)
  return files.some((file) => new RegExp(`^${pattern}(/|$)`).test(file))
}

describe.each(documents)('%s', (document) => {
  const text = readFileSync(document, 'utf8')

  it('links to files and headings that are there', () => {
    const links = [...text.matchAll(/\]\(([^)\s]+)\)/g)]
      .map(([, link]) => link ?? '')
      .filter((link) => !/^[a-z]+:/.test(link))
    const missing = links.filter((link) => {
      const [file = '', anchor] = link.split('#')
      const target = file === '' ? document : path.posix.join(path.posix.dirname(document), file)
      if (!existsSync(target)) return true
      if (anchor === undefined) return false
      const headings = [...readFileSync(target, 'utf8').matchAll(/^#+ (.+)$/gm)].map(([, heading]) =>
        (heading ?? '')
          .toLowerCase()
          .replace(/[^\p{L}\p{N} -]/gu, '')
          .replace(/ /g, '-'),
      )
      return !headings.includes(anchor)
    })
    expect(missing).toEqual([])
  })

  it('names paths of the project that are there', () => {
    const named = [...text.matchAll(/`([^`\n]+)`/g)]
      .map(([, inside]) => inside ?? '')
      .filter((inside) => !inside.includes(' ') && tops.some((top) => inside.startsWith(`${top}/`)))
    expect(named.filter((one) => !isThere(one))).toEqual([])
  })
})

describe('the pictures', () => {
  const folder = 'docs/pictures'
  const shown = [...readFileSync('README.md', 'utf8').matchAll(/!\[([^\]]*)\]\(([^)]+)\)/g)].map(
    ([, words = '', file = '']) => ({ words, file }),
  )

  it('that are kept are those that the script takes, no more and no fewer', () => {
    const taken = [...pictures().keys()].map((name) => `${name}.jpg`)
    expect(readdirSync(folder).sort()).toEqual(taken.sort())
  })

  it('of the README are three to five of them, small, each with words for whoever cannot see it', () => {
    expect(shown.length).toBeGreaterThanOrEqual(3)
    expect(shown.length).toBeLessThanOrEqual(5)
    for (const { words, file } of shown) {
      expect(path.posix.dirname(file)).toBe(folder)
      expect(statSync(file).size, file).toBeLessThan(120_000)
      expect(words.length, file).toBeGreaterThan(30)
    }
  })
})
