import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import path from 'node:path'
import { pageHeaders } from '../shell/content-policy.ts'
import { readPageFile } from '../shell/page-files.ts'

/** A build that the page opens first: put into the page itself, because the page may fetch nothing. */
export interface InitialBuild {
  readonly name: string
  readonly bytes: Uint8Array
}

export interface Served {
  readonly address: string
  close(): Promise<void>
}

/**
 * A browser keeps unsaved work, recent files and choices per address: the same port each time finds them again. Any
 * port will do where this one is taken.
 */
const usualPort = 41730

/**
 * Serves the page to this machine only: on 127.0.0.1, and only to a browser that was given this address (another site
 * that resolves to 127.0.0.1 sends another `Host`).
 */
export async function servePage(
  root: string,
  initial: InitialBuild | null,
  port = usualPort,
): Promise<Served> {
  const server = createServer((request, response) => void answer(server, root, initial, request, response))
  await listen(server, port).catch(() => listen(server, 0))
  return {
    address: `http://${hostOf(server)}/`,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed())
        server.closeAllConnections()
      }),
  }
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((listening, failed) => {
    server.once('error', failed)
    server.listen(port, '127.0.0.1', () => {
      server.off('error', failed)
      listening()
    })
  })
}

const hostOf = (server: Server) => `127.0.0.1:${(server.address() as AddressInfo).port}`

async function answer(
  server: Server,
  root: string,
  initial: InitialBuild | null,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const headers = { ...pageHeaders, connection: 'close' }
  const say = (status: number, text: string) => response.writeHead(status, headers).end(text)
  if (request.headers.host !== hostOf(server)) return void say(403, 'Not for this host.')
  const { origin } = request.headers
  if (origin !== undefined && origin !== `http://${hostOf(server)}`)
    return void say(403, 'Not for this page.')
  if (request.method !== 'GET' && request.method !== 'HEAD') return void say(405, 'Only reading.')
  // The path as it was sent: an address parser would tidy `..` away before it could be refused.
  const pathname = (request.url ?? '/').split('?')[0] ?? '/'
  const found = await readPageFile(root, pathname)
  if (!found) return void say(404, 'There is no such page.')
  const isIndex = path.posix.basename(pathname) === 'index.html' || pathname === '/'
  const body = isIndex && initial ? withInitial(found.bytes, initial) : found.bytes
  response.writeHead(200, {
    ...headers,
    'content-type': found.type,
    'content-length': body.length,
    'cache-control': found.kept,
  })
  response.end(request.method === 'HEAD' ? undefined : body)
}

/** The page with a build in it, as data that no browser runs. Base64: nothing in it can end the element. */
function withInitial(html: Uint8Array, { name, bytes }: InitialBuild): Uint8Array {
  const encode = (content: Uint8Array) => Buffer.from(content).toString('base64')
  const data = `{"name":"${encode(Buffer.from(name))}","bytes":"${encode(bytes)}"}`
  const element = `<script type="application/json" id="initial-build">${data}</script>`
  return Buffer.from(
    Buffer.from(html)
      .toString()
      .replace('</head>', () => `${element}</head>`),
  )
}
