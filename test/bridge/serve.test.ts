import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { servePage, type Served } from '../../src-main/serve/serve.ts'
import { contentPolicy } from '../../src-main/shell/content-policy.ts'

let folder = ''
let served: Served

beforeEach(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-serve-'))
  writeFileSync(path.join(folder, 'index.html'), '<html><head><title>$&</title></head></html>')
  const hostile = '</script><script>alert(1)</script>$&'
  served = await servePage(folder, { name: hostile, bytes: new TextEncoder().encode(hostile) }, 0)
})

afterEach(async () => {
  await served.close()
  rmSync(folder, { recursive: true })
})

interface Answer {
  status: number
  headers: Record<string, unknown>
  text: string
}

/** Sends a path as it is written: `fetch` would tidy it. */
function ask(pathname: string, { method = 'GET', host = '', origin = '' } = {}): Promise<Answer> {
  const { hostname, port, host: own } = new URL(served.address)
  return new Promise((answered, failed) => {
    const asking = request(
      { hostname, port, path: pathname, method, headers: { host: host || own, ...(origin && { origin }) } },
      (response) => {
        let text = ''
        response.setEncoding('utf8')
        response.on('data', (data) => (text += String(data)))
        response.on('end', () =>
          answered({ status: response.statusCode ?? 0, headers: response.headers, text }),
        )
      },
    )
    asking.once('error', failed)
    asking.end()
  })
}

it('serves this machine only', () => {
  expect(new URL(served.address).hostname).toBe('127.0.0.1')
})

it('serves the page with the same content policy as the window', async () => {
  const { status, headers } = await ask('/')
  expect(status).toBe(200)
  expect(headers['content-security-policy']).toBe(contentPolicy)
  expect(headers['x-content-type-options']).toBe('nosniff')
  expect(headers['cross-origin-resource-policy']).toBe('same-origin')
})

it('lets a browser keep what stands under a name of its content, and nothing else', async () => {
  mkdirSync(path.join(folder, 'assets'))
  for (const name of ['index-DddW9hFD.js', 'icon.svg']) writeFileSync(path.join(folder, 'assets', name), '')
  const kept = async (pathname: string) => (await ask(pathname)).headers['cache-control']
  expect(await kept('/assets/index-DddW9hFD.js')).toMatch(/immutable/)
  expect(await kept('/assets/icon.svg')).toBe('no-cache')
  expect(await kept('/')).toBe('no-cache')
})

it('puts the first build into the page as data that can not end its element', async () => {
  const { text } = await ask('/')
  expect(text.match(/<script/g)).toHaveLength(1)
  const data = /id="initial-build">(.*?)<\/script>/.exec(text)?.[1] ?? ''
  const { name, bytes } = JSON.parse(data) as Record<string, string>
  const hostile = '</script><script>alert(1)</script>$&'
  expect(Buffer.from(name ?? '', 'base64').toString()).toBe(hostile)
  expect(Buffer.from(bytes ?? '', 'base64').toString()).toBe(hostile)
  expect(text).toContain('<title>$&</title>')
})

describe('refuses', () => {
  it.each(['evil.example', 'evil.example:80', '127.0.0.1', '127.0.0.1:1', 'localhost'])(
    'the host %s',
    async (host) => {
      expect((await ask('/', { host })).status).toBe(403)
    },
  )

  it.each(['POST', 'PUT', 'DELETE', 'OPTIONS'])('%s', async (method) => {
    expect((await ask('/', { method })).status).toBe(405)
  })

  it.each(['/../index.html', '/%2e%2e/index.html', '/none.js', '/index.html%00'])('%s', async (pathname) => {
    const { status, headers } = await ask(pathname)
    expect(status).toBe(404)
    expect(headers['content-security-policy']).toBe(contentPolicy)
  })
})

it('takes another port where its usual one is taken', async () => {
  const port = Number(new URL(served.address).port)
  const second = await servePage(folder, null, port)
  expect(new URL(second.address).port).not.toBe(String(port))
  await second.close()
})

it('gives a page of another site nothing, and its own page what it asks for', async () => {
  for (const origin of ['https://example.org', 'null', 'http://127.0.0.1:1']) {
    expect((await ask('/', { origin })).status, origin).toBe(403)
  }
  expect((await ask('/', { origin: new URL(served.address).origin })).status).toBe(200)
})
