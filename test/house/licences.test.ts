import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { texts } from '../../src-renderer/frame/licence-texts.ts'
import { licences } from '../../src-renderer/frame/licences.ts'

interface Locked {
  readonly license?: string
  readonly dev?: boolean
  readonly optional?: boolean
  readonly peer?: boolean
}
const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
  packages: Record<string, Locked>
}

/** What Svelte's compiler needs, and types: nothing of it is in what ships. Shrinks: a name that is gone fails. */
const notShipped = [
  '@jridgewell/gen-mapping',
  '@jridgewell/remapping',
  '@jridgewell/resolve-uri',
  '@jridgewell/sourcemap-codec',
  '@jridgewell/trace-mapping',
  '@sveltejs/acorn-typescript',
  '@types/estree',
  '@typescript-eslint/types',
  'acorn',
  'aria-query',
  'axobject-query',
  'esrap',
  'is-reference',
  'locate-character',
  'magic-string',
  'zimmerframe',
]

const inUse = Object.entries(packages).filter(
  ([place, { dev, optional, peer }]) =>
    /^node_modules\/(@[^/]+\/)?[^/]+$/.test(place) && dev !== true && optional !== true && peer !== true,
)
/** Its package.json names none; its file LICENSE is the MIT licence. */
const named: Readonly<Record<string, string>> = { 'png-js': 'MIT' }
const nameOf = (place: string) => place.replace('node_modules/', '')

it('About names every package that ships, with the licence that it says it has', () => {
  const shipped = inUse.filter(([place]) => !notShipped.includes(nameOf(place)))
  expect(licences).toEqual(
    Object.fromEntries(
      shipped.map(([place, { license }]) => [nameOf(place), license ?? named[nameOf(place)]]),
    ),
  )
  const names = inUse.map(([place]) => nameOf(place))
  expect(notShipped.filter((name) => !names.includes(name))).toEqual([])
})

it('and brings the text of each licence, ours first', () => {
  const brought = texts.map(({ name }) => name)
  expect(brought[0]).toBe('Pitchline')
  expect(Object.keys(licences).filter((name) => !brought.includes(name))).toEqual([])
  for (const { text } of texts) expect(text.length).toBeGreaterThan(100)
})
