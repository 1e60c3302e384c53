import { readFileSync } from 'node:fs'
import ts from 'typescript'
import { beforeEach, expect, it, vi } from 'vitest'
import { channels, eventChannel } from '../../src-main/bridge/channels.ts'

const invoked: unknown[][] = []
const heard: string[] = []
let exposed: [string, Record<string, (...words: unknown[]) => unknown>] | null = null

vi.mock('electron', () => ({
  contextBridge: { exposeInMainWorld: (name: string, api: never) => (exposed = [name, api]) },
  ipcRenderer: {
    invoke: (...words: unknown[]) => void invoked.push(words),
    on: (channel: string) => void heard.push(channel),
    off: (channel: string) => void heard.push(`off ${channel}`),
  },
  webUtils: { getPathForFile: (file: { from: string }) => file.from },
}))

beforeEach(async () => {
  vi.resetModules()
  invoked.length = 0
  heard.length = 0
  await import('../../src-main/bridge/preload.ts')
})

const api = () => exposed?.[1] ?? {}

it('offers the verbs of the table, listening, and nothing else', () => {
  expect(exposed?.[0]).toBe('pitchline')
  expect(Object.keys(api()).sort()).toEqual([...Object.keys(channels), 'listen'].sort())
})

it.each(Object.entries(channels))('%s asks on %s only', (verb, channel) => {
  void api()[verb]?.({ from: '/hut/a.build.json' }, 'b', 'c', 'd')
  expect(invoked).toHaveLength(1)
  expect(invoked[0]?.[0]).toBe(channel)
})

it("takes a dropped file's path from the file, whatever the page says", () => {
  void api()['openDropped']?.({ from: '/hut/sled.build.json' }, '/etc/passwd')
  expect(invoked).toEqual([[channels.openDropped, '/hut/sled.build.json']])
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
    'pathOf',
    'webUtils.getPathForFile',
  ]
  expect([...new Set(calls)].sort()).toEqual(allowed.sort())
  expect(calls.filter((call) => call === 'contextBridge.exposeInMainWorld')).toHaveLength(1)
  expect(text).toContain('listener(event)')
  expect(text).not.toMatch(/sendSync|sendToHost|postMessage/)
})
