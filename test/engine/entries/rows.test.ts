import { describe, expect, it } from 'vitest'
import { withDerivedDefaults } from '../../../shared-engine/entries/derived.ts'
import type { Rows, UnionNode } from '../../../shared-engine/entries/rows/group.ts'
import { schemaOf } from '../../../shared-engine/entries/rows/schema.ts'
import type { Complete, ListsOf, Stored } from '../../../shared-engine/entries/rows/types.ts'
import { tableOf } from '../../../shared-engine/entries/rows/walk.ts'

// Invented rows, one of each shape that a build may take: what the build itself has is checked in fields.test.ts.

const count = { label: 'Count', kind: 'count', low: 1, high: 6, whole: true, help: 'How many.' } as const
const size = { label: 'Size', kind: 'length', low: 1, high: 500, help: 'How large.' } as const

const jointKind = {
  kind: {
    label: 'Kind of joint',
    kind: 'text',
    choices: [
      { value: 'key', label: 'Key' },
      { value: 'screw', label: 'Screws' },
    ],
    help: 'What holds the wheel.',
  },
} as const satisfies Rows

const keyRows = { ...jointKind, lengthMm: size } as const
const screwRows = { ...jointKind, screwMm: size, count: { ...count, default: 1 } } as const

const joint = {
  label: 'Joint',
  brings: 'Its limits.',
  whenAbsent: 'none',
  by: 'kind',
  variants: { key: keyRows, screw: screwRows },
} as const satisfies UnionNode

const shaftOnly = { shaftMm: size } as const satisfies Rows

const rows = {
  motor: {
    label: 'Motor',
    entries: {
      joint: {
        ...joint,
        variants: { key: { ...keyRows, ...shaftOnly }, screw: { ...screwRows, ...shaftOnly } },
      },
    },
  },
  stages: {
    label: 'Stages',
    most: 3,
    item: { label: 'Stage', entries: { joint, bored: { ...size, optional: true } } },
  },
  wires: {
    label: 'Wires',
    most: 2,
    item: {
      label: 'Wire',
      entries: {
        amps: { label: 'Amps', kind: 'amps', low: 0.1, high: 500, help: 'For long.' },
        peakAmps: {
          label: 'Peak',
          kind: 'amps',
          low: 0.1,
          high: 500,
          defaultFrom: { says: 'those for long', of: (entries, group) => entries.number(`${group}.amps`) },
          help: 'For seconds.',
        },
      },
    },
  },
  service: {
    label: 'Service',
    whenAbsent: {},
    entries: {
      snow: { label: 'Snow', kind: 'none', flag: true, default: false, help: 'Whether it is snow.' },
      pattern: {
        label: 'Pattern',
        whenAbsent: { rows: [{ seconds: 60 }] },
        entries: {
          name: {
            label: 'Name',
            kind: 'text',
            longest: 5,
            optional: true,
            help: 'Its name.',
            brings: 'Nothing.',
          },
          rows: {
            label: 'Rows',
            most: 4,
            required: true,
            item: {
              label: 'Row',
              entries: { seconds: { label: 'Time', kind: 'time', low: 0.01, high: 100, help: 'How long.' } },
            },
          },
        },
      },
    },
  },
} as const satisfies Rows

type Whole = { readonly label: string; readonly entries: typeof rows }
const stored: Stored<Whole> = {
  motor: { joint: { kind: 'screw', screwMm: 3, shaftMm: 8 } },
  stages: [{ joint: { kind: 'key', lengthMm: 10 } }, { bored: 4 }],
  wires: [{ amps: 20 }, { amps: 20, peakAmps: 90 }],
}

const schema = schemaOf(rows)
const { fields, groups } = tableOf(rows)
const whole = (value: unknown) => withDerivedDefaults(schema.parse(value), fields) as Complete<Whole>

describe('rows of every shape', () => {
  it('make one table, in the order of the file, variants merged', () => {
    expect([...fields.keys()]).toEqual([
      'motor.joint.kind',
      'motor.joint.lengthMm',
      'motor.joint.screwMm',
      'motor.joint.count',
      'motor.joint.shaftMm',
      'stages.*.joint.kind',
      'stages.*.joint.lengthMm',
      'stages.*.joint.screwMm',
      'stages.*.joint.count',
      'stages.*.bored',
      'wires.*.amps',
      'wires.*.peakAmps',
      'service.snow',
      'service.pattern.name',
      'service.pattern.rows.*.seconds',
    ])
    expect(fields.get('stages.*.joint.count')?.onlyWith).toEqual({
      entry: 'stages.*.joint.kind',
      among: ['screw'],
    })
    expect(fields.get('motor.joint.shaftMm')?.onlyWith).toBeUndefined()
    expect(groups.get('stages.*.joint')).toEqual({
      label: 'Joint',
      brings: 'Its limits.',
      optional: true,
      mayVanish: true,
    })
    expect(groups.get('service.pattern.rows')).toEqual({
      label: 'Rows',
      most: 4,
      optional: false,
      mayVanish: false,
    })
    expect(groups.get('service.pattern')).toEqual({ label: 'Pattern', optional: false, mayVanish: true })
  })

  it('fill in defaults: of an entry, of a group, of one that rests on another', () => {
    expect(whole(stored)).toEqual({
      motor: { joint: { kind: 'screw', screwMm: 3, count: 1, shaftMm: 8 } },
      stages: [{ joint: { kind: 'key', lengthMm: 10 } }, { bored: 4 }],
      wires: [
        { amps: 20, peakAmps: 20 },
        { amps: 20, peakAmps: 90 },
      ],
      service: { snow: false, pattern: { rows: [{ seconds: 60 }] } },
    })
    expect(whole({ motor: {} })).toEqual({
      motor: {},
      stages: [],
      wires: [],
      service: { snow: false, pattern: { rows: [{ seconds: 60 }] } },
    })
  })

  it.each([
    ['a joint of another kind', { motor: { joint: { kind: 'glue' } } }],
    ['an entry of another kind', { motor: { joint: { kind: 'key', lengthMm: 5, shaftMm: 8, screwMm: 3 } } }],
    ['a joint without its own entry', { motor: {}, stages: [{ joint: { kind: 'key' } }] }],
    ['a list that is too long', { motor: {}, wires: [{ amps: 1 }, { amps: 1 }, { amps: 1 }] }],
    ['a list inside a group that has to have a row', { motor: {}, service: { pattern: { rows: [] } } }],
    ['a yes or no that is a number', { motor: {}, service: { snow: 1 } }],
    [
      'a text that is too long',
      { motor: {}, service: { pattern: { name: 'longer', rows: [{ seconds: 1 }] } } },
    ],
    ['no part that is required', {}],
  ])('refuse %s', (_what, value) => {
    expect(schema.safeParse(value).success).toBe(false)
  })

  it('have static types of their own', () => {
    const peak: number = whole(stored).wires[0]?.peakAmps ?? NaN
    expect(peak).toBe(20)
    const list: ListsOf<typeof rows> = 'service.pattern.rows'
    expect(list).toBe('service.pattern.rows')
    // @ts-expect-error a wire has to say its amps
    const lacking: Stored<Whole>['wires'] = [{ peakAmps: 3 }]
    // @ts-expect-error a key has no screws
    const other: Stored<Whole>['stages'] = [{ joint: { kind: 'key', lengthMm: 3, screwMm: 3 } }]
    expect([lacking, other]).toHaveLength(2)
  })
})
