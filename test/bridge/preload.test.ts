import { readFileSync } from 'node:fs'
import ts from 'typescript'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { channels, eventChannel } from '../../src-main/bridge/channels.ts'

const invoked: unknown[][] = []
const heard: string[] = []
let exposed: [string, Record<string, (...words: unknown[]) => unknown>] | null = null

/** A file as the runtime has it: where it lies is known to a getter that takes nothing but such a file. */
class File {
  readonly #lies: string
  constructor(lies: string) {
    this.#lies = lies
  }
  get path(): string {
    return this.#lies
  }
}
vi.stubGlobal('File', File)
const lyingAt = (file: File) =>
  Object.getOwnPropertyDescriptor(File.prototype, 'path')?.get?.call(file) as string

let isOld = false
vi.mock('electron', () => ({
  contextBridge: { exposeInMainWorld: (name: string, api: never) => (exposed = [name, api]) },
  ipcRenderer: {
    invoke: (...words: unknown[]) => void invoked.push(words),
    on: (channel: string) => void heard.push(channel),
    off: (channel: string) => void heard.push(`off ${channel}`),
  },
  get webUtils() {
    return isOld ? undefined : { getPathForFile: lyingAt }
  },
}))

async function load(old: boolean) {
  isOld = old
  vi.resetModules()
  invoked.length = 0
  heard.length = 0
  await import('../../src-main/bridge/preload.ts')
}

beforeEach(() => load(false))

const api = () => exposed?.[1] ?? {}

it('offers the verbs of the table, listening, and nothing else', () => {
  expect(exposed?.[0]).toBe('pitchline')
  expect(Object.keys(api()).sort()).toEqual([...Object.keys(channels), 'listen'].sort())
})

it.each(Object.entries(channels))('%s asks on %s only', (verb, channel) => {
  void api()[verb]?.(new File('/hut/a.build.json'), 'b', 'c', 'd')
  expect(invoked).toHaveLength(1)
  expect(invoked[0]?.[0]).toBe(channel)
})

describe.each([
  ['that finds files by a call', false],
  ['of before Electron 29', true],
])('in a runtime %s', (_which, old) => {
  beforeEach(() => load(old))

  it("a dropped file's path is taken from the file, whatever the page says", () => {
    const file = Object.assign(new File('/hut/sled.build.json'), {})
    Object.defineProperty(file, 'path', { value: '/etc/passwd' })
    void api()['openDropped']?.(file, '/etc/passwd')
    expect(invoked).toEqual([[channels.openDropped, '/hut/sled.build.json']])
  })

  it.each([
    ['an object with a path', { path: '/etc/passwd' }],
    ['an object that inherits from File', Object.create(File.prototype, { path: { value: '/etc/passwd' } })],
    ['text', '/etc/passwd'],
    ['nothing', undefined],
  ])('%s is no file: no path is asked for', (_what, given: unknown) => {
    void api()['openDropped']?.(given)
    expect(invoked).toEqual([[channels.openDropped, '']])
  })
})

it('hears one channel, until told to stop', () => {
  const stop = api()['listen']?.(() => undefined) as () => void
  expect(heard).toEqual([eventChannel])
  stop()
  expect(heard).toEqual([eventChannel, `off ${eventChannel}`])
})

it('hands the page nothing of Electron: one thing exposed, no event object passed on', () => {
  const text = readFileSync('src-main/bridge/preload.ts', 'utf8')
  const source = ts.createSourceFile('preload.ts', text, ts.ScriptTarget.Latest, true)
  const calls: string[] = []
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node)) calls.push(node.expression.getText(source))
    ts.forEachChild(node, visit)
  }
  visit(source)
  const allowed = [
    'contextBridge.exposeInMainWorld',
    'ipcRenderer.invoke',
    'ipcRenderer.on',
    'ipcRenderer.off',
    'listener',
    'Object.getOwnPropertyDescriptor',
    'String',
    'older?.call',
    'pathOf',
    'webUtils.getPathForFile',
  ]
  expect([...new Set(calls)].sort()).toEqual(allowed.sort())
  expect(calls.filter((call) => call === 'contextBridge.exposeInMainWorld')).toHaveLength(1)
  expect(text).toContain('listener(event)')
  expect(text).not.toMatch(/sendSync|sendToHost|postMessage/)
})
