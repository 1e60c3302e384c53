import fc from 'fast-check'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { channels, type Verb } from '../../src-main/bridge/channels.ts'
import { contract } from '../../src-main/bridge/contract.ts'
import { isOurPage, receive, type Asker, type Handlers } from '../../src-main/bridge/receive.ts'

const verbs = Object.keys(channels) as Verb[]
const ours = 1
const handle = '1b4e28ba-2fa1-41d2-883f-0016d3cca427'
const fingerprint = 'a'.repeat(64)

/** Arguments that each verb takes. */
const good: Record<Verb, unknown[]> = {
  facts: [],
  start: [],
  open: [],
  read: [handle],
  openDropped: ['/hut/sled.build.json'],
  release: [handle],
  recent: [],
  openRecent: ['0123456789abcdef01234567'],
  clearRecent: [],
  save: [handle, { text: '{}', keeps: 0 }, fingerprint],
  saveAs: ['sled.build.json', { text: '{}', keeps: 0 }],
  exportFile: ['svg', 'plot', new Uint8Array([1])],
  exportPdf: ['a4', 'sled-sheet'],
  keep: [{ name: 'sled', text: '{}', handle: null, fingerprint: null }],
  forget: [],
  discardRecovered: [handle],
  show: [{ name: 'sled', unsaved: true, undo: null, redo: null }],
  newWindow: [],
  heardClose: [],
  answerClose: [true],
}

/** A page's main frame, or whatever a test makes of it. */
function askerAt(url: string, id = ours): Asker {
  const frame = { url }
  return { sender: { id, mainFrame: frame }, senderFrame: frame }
}

const page = askerAt('app://pitchline/index.html')

function bridge(answer: (verb: Verb) => unknown = () => ({ ok: true, value: null })) {
  const called: Verb[] = []
  const handlers = Object.fromEntries(
    verbs.map((verb) => [
      verb,
      () => {
        called.push(verb)
        return answer(verb)
      },
    ]),
  ) as unknown as Handlers
  const answers = new Map<string, (event: Asker, ...words: unknown[]) => Promise<unknown>>()
  receive(
    { handle: (channel, listener) => void answers.set(channel, listener) },
    handlers,
    (id) => id === ours,
  )
  const ask = (verb: Verb, event: Asker, words: unknown[]) => answers.get(channels[verb])?.(event, ...words)
  return { called, ask, heard: [...answers.keys()] }
}

const refusal = { ok: false, mistakes: [{ code: 'request-refused' }] }

afterEach(() => vi.restoreAllMocks())

it('hears the channels of the table and no other', () => {
  expect(bridge().heard.sort()).toEqual(Object.values(channels).sort())
  expect(Object.keys(contract).sort()).toEqual(verbs.sort())
  for (const verb of verbs) expect(contract[verb].channel).toBe(channels[verb])
  expect(new Set(Object.values(channels)).size).toBe(verbs.length)
})

it.each(verbs)('%s is answered to our page with what it takes', async (verb) => {
  const { ask, called } = bridge()
  expect(await ask(verb, page, good[verb])).toEqual({ ok: true, value: null })
  expect(called).toEqual([verb])
})

describe('a sender that is not our page is refused before anything happens', () => {
  const frame = { url: 'app://pitchline/index.html' }
  const elsewhere: [string, Asker][] = [
    ['another site', askerAt('https://example.org/')],
    ['a host that begins like ours', askerAt('app://pitchline.example.org/')],
    ['a file', askerAt('file:///index.html')],
    ['no address', askerAt('')],
    ['a window that is not ours', askerAt('app://pitchline/index.html', 99)],
    ['a frame in our page', { sender: { id: ours, mainFrame: frame }, senderFrame: { ...frame } }],
    ['a frame that is gone', { sender: { id: ours, mainFrame: frame }, senderFrame: null }],
  ]
  it.each(elsewhere)('%s', async (_who, asker) => {
    expect(isOurPage(asker, (id) => id === ours)).toBe(false)
    const { ask, called } = bridge()
    for (const verb of verbs) expect(await ask(verb, asker, good[verb])).toMatchObject(refusal)
    expect(called).toEqual([])
  })
})

describe('arguments that do not fit are refused before anything happens', () => {
  const bad: [Verb, unknown[]][] = [
    ['read', []],
    ['read', ['/etc/passwd']],
    ['read', ['../../sled']],
    ['openRecent', ['/etc/passwd']],
    ['openDropped', ['']],
    ['openDropped', ['x'.repeat(5000)]],
    ['save', [handle, { text: '{}', keeps: 0 }, 'not a fingerprint']],
    ['save', [handle, { text: '{}', keeps: -1 }, 'overwrite']],
    ['save', [handle, { text: 'x'.repeat(5 * 1024 * 1024), keeps: 0 }, 'overwrite']],
    ['saveAs', ['../../.bashrc', { text: '{}', keeps: 0 }]],
    ['saveAs', ['a\u0000b', { text: '{}', keeps: 0 }]],
    ['saveAs', ['a\\b', { text: '{}', keeps: 0 }]],
    ['exportFile', ['exe', 'plot', new Uint8Array()]],
    ['exportFile', ['svg', 'plot', 'text']],
    ['exportFile', ['svg', '/etc/cron.d/x', new Uint8Array()]],
    ['exportPdf', ['a5', 'sheet']],
    ['exportPdf', ['a4', '../sheet']],
    ['exportPdf', ['a4', 'sheet', '/tmp']],
    ['exportPdf', [{ pageSize: 'A4' }, 'sheet']],
    ['discardRecovered', ['../recent']],
    ['keep', [{ name: 'sled', text: '{}', handle: null, fingerprint: null, file: '/etc/passwd' }]],
    ['answerClose', ['yes']],
    ['heardClose', [true]],
    ['facts', ['one word too many']],
  ]
  it.each(bad)('%s with %j', async (verb, words) => {
    const { ask, called } = bridge()
    expect(await ask(verb, page, words)).toMatchObject(refusal)
    expect(called).toEqual([])
  })

  it('whatever they are, the answer is a value: never a throw, never a handler called with what it does not take', async () => {
    const anything = fc.array(
      fc.oneof(
        fc.anything({ withBigInt: true, withDate: true, withMap: true, withTypedArray: true }),
        fc.string(),
      ),
      { maxLength: 4 },
    )
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...verbs), anything, async (verb, words) => {
        const { ask, called } = bridge()
        const answer = await ask(verb, page, words)
        const fits = contract[verb].takes.safeParse(words).success
        expect(called).toEqual(fits ? [verb] : [])
        if (!fits) expect(answer).toMatchObject(refusal)
      }),
      { numRuns: 2000 },
    )
  })
})

it('what a handler throws is logged here; the page hears that it was our fault, not the details', async () => {
  const log = vi.spyOn(console, 'error').mockImplementation(() => undefined)
  const { ask } = bridge(() => {
    throw new Error('secret path /home/person')
  })
  const answer = await ask('recent', page, [])
  expect(answer).toMatchObject({ ok: false, mistakes: [{ code: 'own-fault', value: 'recent' }] })
  expect(JSON.stringify(answer)).not.toContain('secret')
  expect(log).toHaveBeenCalledOnce()
})
