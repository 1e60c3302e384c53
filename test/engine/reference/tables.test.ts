import { describe, expect, it } from 'vitest'
import type { z } from '../../../shared-engine/reference/zod.ts'
import belts from '../../../shared-engine/reference/belts.json' with { type: 'json' }
import { beltTableSchema } from '../../../shared-engine/reference/belts.ts'
import chains from '../../../shared-engine/reference/chains.json' with { type: 'json' }
import { chainTableSchema } from '../../../shared-engine/reference/chains.ts'
import chemistry from '../../../shared-engine/reference/chemistry.json' with { type: 'json' }
import { chemistryTableSchema } from '../../../shared-engine/reference/chemistry.ts'
import coolants from '../../../shared-engine/reference/coolants.json' with { type: 'json' }
import { coolantTableSchema } from '../../../shared-engine/reference/coolants.ts'
import gears from '../../../shared-engine/reference/gears.json' with { type: 'json' }
import { gearTableSchema } from '../../../shared-engine/reference/gears.ts'
import ground from '../../../shared-engine/reference/ground.json' with { type: 'json' }
import { groundTableSchema } from '../../../shared-engine/reference/ground.ts'
import heat from '../../../shared-engine/reference/heat.json' with { type: 'json' }
import { heatTableSchema } from '../../../shared-engine/reference/heat.ts'
import magnets from '../../../shared-engine/reference/magnets.json' with { type: 'json' }
import { magnetTableSchema } from '../../../shared-engine/reference/magnets.ts'
import materials from '../../../shared-engine/reference/materials.json' with { type: 'json' }
import { materialTableSchema } from '../../../shared-engine/reference/materials.ts'
import { assertTable } from '../../../shared-engine/reference/table.ts'

const tables: [string, z.ZodType, object][] = [
  ['belts', beltTableSchema, belts],
  ['chains', chainTableSchema, chains],
  ['chemistry', chemistryTableSchema, chemistry],
  ['coolants', coolantTableSchema, coolants],
  ['gears', gearTableSchema, gears],
  ['ground', groundTableSchema, ground],
  ['heat', heatTableSchema, heat],
  ['magnets', magnetTableSchema, magnets],
  ['materials', materialTableSchema, materials],
]

/** Every place in a table that bears a source, as a function that empties it in a copy. */
function withoutEachSource(table: object): object[] {
  const copies: object[] = []
  const visit = (path: string[], value: unknown) => {
    if (typeof value !== 'object' || value === null) return
    for (const [key, inner] of Object.entries(value)) {
      if (key === 'source' && 'fromMemory' in value) {
        const copy = structuredClone(table) as Record<string, unknown>
        const holder = path.reduce<Record<string, unknown>>(
          (at, name) => at[name] as Record<string, unknown>,
          copy,
        )
        holder['source'] = ''
        copies.push(copy)
      }
      visit([...path, key], inner)
    }
  }
  visit([], table)
  return copies
}

describe.each(tables)('table %s', (name, schema, table) => {
  it('fits its schema', () => {
    expect(() => assertTable(name, schema, table)).not.toThrow()
  })

  it('is refused without any one of its sources', () => {
    const copies = withoutEachSource(table)
    expect(copies.length).toBeGreaterThan(0)
    for (const copy of copies) expect(() => assertTable(name, schema, copy)).toThrow('source')
  })

  it('is refused with a key that nobody reads', () => {
    expect(() => assertTable(name, schema, { ...table, extra: 1 })).toThrow('extra')
  })
})
