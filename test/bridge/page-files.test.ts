import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { pageFileOf, readPageFile } from '../../src-main/shell/page-files.ts'

const root = path.resolve('/srv/page')

describe('the file that an address stands for', () => {
  it.each([
    ['/', 'index.html'],
    ['/index.html', 'index.html'],
    ['/assets/index-a1B2_c3.js', 'assets/index-a1B2_c3.js'],
    ['/assets/font-1.woff2', 'assets/font-1.woff2'],
  ])('%s is %s', (pathname, file) => {
    expect(pageFileOf(root, pathname)).toBe(path.join(root, file))
  })

  it.each([
    '/../secret.js',
    '/assets/../../secret.js',
    '/%2e%2e/secret.js',
    '/%2E%2e%2fsecret.js',
    '/..%5csecret.js',
    '/..\\secret.js',
    '/assets\\..\\..\\secret.js',
    '/index.html\u0000.js',
    '/%00index.html',
    '//etc/passwd.js',
    '/C:/secret.js',
    '/.hidden.js',
    '/assets/.git/config.js',
    '/./index.html',
    '/index.html/',
    '/index',
    '/main.cjs',
    '/package.json',
    '',
    'index.html',
  ])('%j is none', (pathname) => {
    expect(pageFileOf(root, pathname)).toBeNull()
  })

  it('is inside the page folder or none, whatever the address', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        '..',
        '.',
        '%2e',
        '%2e%2e',
        '%5c',
        '\\',
        '/',
        '//',
        '\0',
        '%00',
        'a',
        'index.html',
        ':',
        '~',
      ),
      fc.string({ maxLength: 6 }),
    )
    const pathname = fc.array(piece, { maxLength: 10 }).map((pieces) => `/${pieces.join('/')}`)
    fc.assert(
      fc.property(fc.oneof(pathname, fc.string({ unit: 'binary' })), (wanted) => {
        const file = pageFileOf(root, wanted)
        if (file !== null) expect(path.resolve(file).startsWith(root + path.sep)).toBe(true)
      }),
      { numRuns: 20_000 },
    )
  })
})

describe('reading a file of the page', () => {
  let folder = ''
  beforeAll(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-page-'))
    mkdirSync(path.join(folder, 'page'))
    writeFileSync(path.join(folder, 'secret.js'), 'secret')
    writeFileSync(path.join(folder, 'page', 'index.html'), '<p>')
    symlinkSync(path.join(folder, 'secret.js'), path.join(folder, 'page', 'link.js'))
    symlinkSync(folder, path.join(folder, 'page', 'out'))
  })
  afterAll(() => rmSync(folder, { recursive: true }))

  it('gives its type and bytes', async () => {
    const found = await readPageFile(path.join(folder, 'page'), '/')
    expect(found?.type).toBe('text/html; charset=utf-8')
    expect(Buffer.from(found?.bytes ?? []).toString()).toBe('<p>')
  })

  it.each(['/link.js', '/out/secret.js', '/none.js'])('gives nothing for %s', async (pathname) => {
    expect(await readPageFile(path.join(folder, 'page'), pathname)).toBeNull()
  })
})
