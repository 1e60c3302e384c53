import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { contentPolicy } from '../../src-main/shell/content-policy.ts'
import { fileNamedBy } from '../../src-main/shell/arguments.ts'
import { mayHave, mayNavigate, mayOpenOutside, openedOutside } from '../../src-main/shell/policy.ts'

describe('where the window may go', () => {
  it.each(['app://pitchline/index.html', 'app://pitchline/index.html#plot'])('%s', (address) => {
    expect(mayNavigate(address)).toBe(true)
  })

  it.each([
    'https://example.org/',
    'http://127.0.0.1/',
    'file:///etc/passwd',
    'app://pitchline.example.org/',
    'app://elsewhere/index.html',
    'app://pitchline/assets/index.js',
    'app://pitchline/none.html',
    'app://person@pitchline/index.html',
    'javascript:alert(1)',
    'data:text/html,<p>',
    'blob:app://pitchline/1',
    'about:blank',
    'devtools://devtools/x',
    '',
  ])('not to %j', (address) => {
    expect(mayNavigate(address)).toBe(false)
  })
})

describe('what the system browser may be given', () => {
  const hosts = ['example.org']

  it('nothing at all as it ships: the list is empty', () => {
    expect(openedOutside).toEqual([])
    fc.assert(fc.property(fc.webUrl(), (address) => !mayOpenOutside(address)))
  })

  it.each([
    ['https://example.org/help', true],
    ['http://example.org/help', false],
    ['https://example.org.elsewhere.com/', false],
    ['https://elsewhere.com/example.org', false],
    ['https://person@example.org/', false],
    ['https://example.org:8443/', false],
    ['file:///etc/passwd', false],
    ['mailto:person@example.org', false],
    ['ms-settings:', false],
    ['', false],
  ])('%j with a list of one host: %s', (address, may) => {
    expect(mayOpenOutside(address, hosts)).toBe(may)
  })
})

it('every permission that Electron knows is denied, but for writing text to the clipboard', () => {
  const types = readFileSync('node_modules/electron/electron.d.ts', 'utf8')
  const handler = /setPermissionRequestHandler\(handler: .*?permission: ([^,]+),/s.exec(types)?.[1] ?? ''
  const check = /setPermissionCheckHandler\(handler: .*?permission: ([^,]+),/s.exec(types)?.[1] ?? ''
  const names = [...`${handler} ${check}`.matchAll(/'([\w-]+)'/g)].map(([, name]) => name ?? '')
  expect(new Set(names).size).toBeGreaterThan(15)
  expect([...new Set(names)].filter(mayHave)).toEqual(['clipboard-sanitized-write'])
})

it('the content policy denies all but the page itself', () => {
  const rules = Object.fromEntries(
    contentPolicy.split('; ').map((rule) => [rule.split(' ')[0] ?? '', rule.split(' ').slice(1).join(' ')]),
  )
  expect(rules).toEqual({
    'default-src': "'none'",
    'script-src': "'self'",
    'style-src': "'self'",
    'img-src': "'self' data: blob:",
    'font-src': "'self'",
    'worker-src': "'self'",
    'connect-src': "'none'",
    'frame-ancestors': "'none'",
    'form-action': "'none'",
    'base-uri': "'none'",
  })
})

describe('the build named on the command line', () => {
  it.each([
    [['electron', '.', 'a.build.json'], false, '/hut/a.build.json'],
    [['electron', '--flag', '.', '--other', 'a.build.json'], false, '/hut/a.build.json'],
    [['electron', '.'], false, null],
    [['pitchline', 'a.build.json'], true, '/hut/a.build.json'],
    [['pitchline', '/other/a.build.json'], true, '/other/a.build.json'],
    [['pitchline', '--flag'], true, null],
    [['pitchline', ''], true, null],
  ])('%j (packaged: %s) is %s', (words, isPackaged, file) => {
    expect(fileNamedBy(words, '/hut', isPackaged)).toBe(file)
  })
})
