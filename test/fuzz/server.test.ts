import { connect } from 'node:net'
import path from 'node:path'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { randomStream } from '../../shared-engine/numeric/random.ts'
import { servePage, type Served } from '../../src-main/serve/serve.ts'
import { belowOf, fuzzed, seedsOf, spoiltBytes } from './spoil.ts'

// Requests spoilt at random, as bytes on a socket: the server answers or hangs up, gives away nothing from outside the
// page's folder, and serves the page as before when they are through.

const secret = 'kept outside of the page'
let folder = ''
let served: Served | null = null

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'pitchline-fuzz-'))
  mkdirSync(path.join(folder, 'page'))
  writeFileSync(path.join(folder, 'page', 'index.html'), '<!doctype html><title>page</title>')
  writeFileSync(path.join(folder, 'secret.txt'), secret)
  served = await servePage(path.join(folder, 'page'), null, 0)
})

afterAll(async () => {
  await served?.close()
  rmSync(folder, { recursive: true, force: true })
})

const paths = [
  '/',
  '/index.html',
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/..%2fsecret.txt',
  '//secret.txt',
  '*',
]
const methods = ['GET', 'HEAD', 'POST', 'PUT', 'DELETE', 'CONNECT', 'TRACE', 'OPTIONS', 'BREW']

/** All that comes back for some bytes, until the server hangs up or says no more. */
function answerTo(bytes: Uint8Array, port: number): Promise<string> {
  return new Promise((ended, failed) => {
    let said = ''
    const socket = connect(port, '127.0.0.1', () => socket.end(bytes))
    socket.setTimeout(10_000, () => {
      socket.destroy()
      failed(new Error('no answer and not hung up within 10 s'))
    })
    socket.on('data', (data) => (said += data.toString('latin1')))
    socket.once('error', () => ended(said))
    socket.once('close', () => ended(said))
  })
}

it(
  `${fuzzed} requests spoilt at random neither end the server nor get anything from outside the page`,
  async () => {
    const address = new URL(served?.address ?? '')
    const port = Number(address.port)
    const troubles: string[] = []
    for (const seed of seedsOf(fuzzed)) {
      const random = randomStream(seed, 13)
      const below = belowOf(random)
      const line = `${methods[below(methods.length)] ?? ''} ${paths[below(paths.length)] ?? ''} HTTP/1.1`
      const host = below(4) === 0 ? 'elsewhere.example' : address.host
      const sound = new TextEncoder().encode(`${line}\r\nHost: ${host}\r\nConnection: close\r\n\r\n`)
      const bytes = below(3) === 0 ? sound : spoiltBytes(sound, random)
      try {
        const said = await answerTo(bytes, port)
        if (said.includes(secret)) troubles.push(`${seed}: gave away a file`)
        if (said !== '' && !/^HTTP\/1\.1 \d{3} /.test(said)) troubles.push(`${seed}: ${said.slice(0, 80)}`)
        if (/^HTTP\/1\.1 5/.test(said)) troubles.push(`${seed}: ${said.slice(0, 80)}`)
      } catch (thrown) {
        troubles.push(`${seed}: ${String(thrown)}`)
      }
    }
    expect(troubles).toEqual([])
    const page = await fetch(address)
    expect(page.status).toBe(200)
    expect(await page.text()).toContain('<title>page</title>')
  },
  60_000 + 100 * fuzzed,
)
