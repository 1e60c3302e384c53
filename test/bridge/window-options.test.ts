import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const sources = readdirSync('src-main', { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => path.join('src-main', file))

const textOf = (file: string) => readFileSync(file, 'utf8')

/** The literal members of `webPreferences` in a source. */
function preferencesIn(file: string): Record<string, string> {
  const source = ts.createSourceFile(file, textOf(file), ts.ScriptTarget.Latest, true)
  const found: Record<string, string> = {}
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAssignment(node) && node.name.getText(source) === 'webPreferences') {
      for (const one of (node.initializer as ts.ObjectLiteralExpression).properties) {
        if (!ts.isPropertyAssignment(one)) throw new Error(`${one.getText(source)} is not written out`)
        found[one.name.getText(source)] = one.initializer.getText(source)
      }
    }
    ts.forEachChild(node, visit)
  }
  visit(source)
  return found
}

describe('the window', () => {
  it('is made in one place', () => {
    const makers = sources.filter((file) =>
      /new (BrowserWindow|BrowserView|WebContentsView|BaseWindow)\b/.test(textOf(file)),
    )
    expect(makers).toEqual([path.join('src-main', 'shell', 'windows.ts')])
    expect(textOf(makers[0] ?? '').match(/new BrowserWindow\b/g)).toHaveLength(1)
  })

  it('is isolated, sandboxed, and given nothing of Node, literally', () => {
    const { preload, ...others } = preferencesIn(path.join('src-main', 'shell', 'windows.ts'))
    expect(preload).toContain('preload.cjs')
    expect(others).toEqual({
      contextIsolation: 'true',
      sandbox: 'true',
      webSecurity: 'true',
      nodeIntegration: 'false',
      nodeIntegrationInWorker: 'false',
      nodeIntegrationInSubFrames: 'false',
      webviewTag: 'false',
      spellcheck: 'false',
      navigateOnDragDrop: 'false',
    })
  })
})

it.each([
  [
    'switches that take safety away',
    /no-sandbox|disable-web-security|allowRunningInsecureContent|experimentalFeatures|enableBlinkFeatures/,
  ],
  ['file addresses', /loadFile|['"`]file:/],
  ['a way past the bridge', /ipcMain\.(on|once)\b|\.remote\b|executeJavaScript|child_process/],
  ['network', /\bnet\.(fetch|request)|node:https|autoUpdater|crashReporter|\bfetch\(/],
])('no source of the program has %s', (_what, pattern) => {
  expect(sources.filter((file) => pattern.test(textOf(file)))).toEqual([])
})

it('no source gives the runtime a switch but the one that takes its network away', () => {
  const givers = sources.filter((file) => /\.commandLine/.test(textOf(file)))
  expect(givers).toEqual([path.join('src-main', 'shell', 'no-network.ts')])
  expect(textOf(givers[0] ?? '').match(/commandLine.*/g)).toEqual([
    "commandLine.appendSwitch('host-resolver-rules', resolverRules)",
  ])
})

it('no shipped script starts Electron without its sandbox', () => {
  const scripts = readdirSync('scripts').filter((file) => file.endsWith('.ts'))
  expect(scripts.filter((file) => textOf(path.join('scripts', file)).includes('no-sandbox'))).toEqual([])
  expect(textOf('package.json')).not.toContain('no-sandbox')
})
