import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { History } from '../../src-renderer/state/history.svelte.ts'

interface Page {
  readonly text: string
}

/** What a person does to a document, in any order. */
const deeds = fc.array(
  fc.oneof(
    fc.record({
      do: fc.constant('change' as const),
      group: fc.option(fc.constantFrom('a', 'b'), { nil: null }),
    }),
    fc.record({ do: fc.constantFrom('undo' as const, 'redo' as const, 'save' as const, 'close' as const) }),
  ),
  { maxLength: 120 },
)

function carryOut(
  history: History<Page>,
  list: typeof deeds extends fc.Arbitrary<infer D> ? D : never,
): void {
  list.forEach((deed, index) => {
    if (deed.do === 'change') history.change(`change ${index}`, { text: `${index}` }, deed.group)
    if (deed.do === 'undo') history.undo()
    if (deed.do === 'redo') history.redo()
    if (deed.do === 'save') history.markSaved()
    if (deed.do === 'close') history.closeGroup()
  })
}

describe('History', () => {
  it('comes back to the very start by undo, and to the very end by redo, whatever was done', () => {
    fc.assert(
      fc.property(deeds, (list) => {
        const start = { text: 'start' }
        const history = new History<Page>(start)
        carryOut(history, list)
        while (history.redoName !== null) history.redo()
        const end = history.document
        while (history.undoName !== null) history.undo()
        expect(history.document).toBe(start)
        while (history.redoName !== null) history.redo()
        expect(history.document).toBe(end)
      }),
    )
  })

  it('is clean exactly where the document in force is the one that was saved last', () => {
    fc.assert(
      fc.property(deeds, deeds, (before, after) => {
        const history = new History<Page>({ text: 'start' })
        carryOut(history, before)
        history.markSaved()
        const onDisk = history.document
        carryOut(
          history,
          after.filter((deed) => deed.do !== 'save'),
        )
        expect(history.isSaved).toBe(history.document === onDisk)
      }),
    )
  })

  it('can always come back to the saved document by undo after typing over it in the same group', () => {
    const history = new History<Page>({ text: '' })
    history.change('type', { text: '1' }, 'field')
    history.markSaved()
    history.change('type', { text: '12' }, 'field')
    expect(history.isSaved).toBe(false)
    history.undo()
    expect(history.document.text).toBe('1')
    expect(history.isSaved).toBe(true)
  })

  it('counts one step for one spell of typing, and a new one after the field was left', () => {
    const history = new History<Page>({ text: '' })
    history.change('mass', { text: '1' }, 'mass')
    history.change('mass', { text: '12' }, 'mass')
    expect(history.depth).toBe(1)
    history.closeGroup()
    history.change('mass', { text: '3' }, 'mass')
    expect(history.depth).toBe(2)
    expect(history.undoName).toBe('mass')
  })

  it('takes typing back on Escape, and nothing else', () => {
    const history = new History<Page>({ text: 'start' })
    history.change('pitch', { text: 'pitch' })
    history.change('mass', { text: 'mass' }, 'mass')
    history.abandon('mass')
    expect(history.document.text).toBe('pitch')
    history.abandon('mass')
    expect(history.document.text).toBe('pitch')
  })

  it('cuts off what had been undone once something new is done', () => {
    const history = new History<Page>({ text: 'start' })
    history.change('one', { text: 'one' })
    history.undo()
    history.change('two', { text: 'two' })
    expect(history.redoName).toBeNull()
    expect(history.undoName).toBe('two')
  })

  it('keeps at least 200 steps', () => {
    const history = new History<number>(0)
    for (let index = 1; index <= 300; index += 1) history.change(`step ${index}`, index)
    expect(history.depth).toBe(300)
  })
})

it('the document before a change is held beside it until something else is done', () => {
  const history = new History<Page>({ text: 'start' })
  const start = history.document
  expect(history.former).toBeNull()
  history.change('type', { text: 'one' }, 'field')
  history.change('type', { text: 'two' }, 'field')
  expect(history.former).toBe(start)
  history.closeGroup()
  const typed = history.document
  history.change('choose', { text: 'three' })
  expect(history.former).toBe(typed)
  history.undo()
  expect(history.former).toBeNull()
  history.redo()
  expect(history.former).toBeNull()
  history.change('type', { text: 'four' }, 'field')
  history.abandon('field')
  expect(history.former).toBeNull()
  history.change('choose', { text: 'five' })
  history.forgetFormer()
  expect(history.former).toBeNull()
  expect(history.document.text).toBe('five')
})
