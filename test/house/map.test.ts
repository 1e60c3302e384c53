import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { orders } from '../../scripts/lint/arrows.js'

const text = readFileSync('DEVELOPERS.md', 'utf8')
const map = text.slice(text.indexOf('## The map'), text.indexOf('## Words of the code'))

/** Names in the first column of the map's table for a part of the project, in their order. */
function rowsOf(part: string): string[] {
  const table = map.split(`| in \`${part}\``)[1]?.split('\n\n')[0] ?? ''
  return [...table.matchAll(/^\| (`[^|]+) \|/gm)].flatMap(([, cell]) =>
    [...(cell ?? '').matchAll(/`([^`]+)`/g)].map(([, name]) => name ?? ''),
  )
}

describe.each(Object.keys(orders))('the map of %s', (part) => {
  const order = (orders[part] ?? []).flat().filter((one) => existsSync(`${part}/${one}`))

  it('has a row for every folder that is there, in the order of imports', () => {
    const rows = rowsOf(part).filter((name) => !name.includes('<') && !name.startsWith('stages/'))
    const known = new Set(rows)
    expect(order.filter((one) => !known.has(one) && one !== 'questions')).toEqual([])
    const placed = rows.filter((name) => order.includes(name))
    expect(placed).toEqual(order.filter((one) => known.has(one)))
  })

  it('has no folder that the order does not know', () => {
    const there = readdirSync(part).filter((name) => statSync(`${part}/${name}`).isDirectory())
    expect(there.filter((name) => !order.some((one) => one.split('/')[0] === name))).toEqual([])
  })
})

it('the map names every folder of tests', () => {
  const folders = readdirSync('test').filter((name) => statSync(`test/${name}`).isDirectory())
  expect(folders.filter((name) => !map.includes(`\`test/${name}\``))).toEqual([])
})
