import path from 'node:path'
import { app, protocol } from 'electron'
import { pageHeaders } from './content-policy.ts'
import { readPageFile } from './page-files.ts'

export const pageAddress = 'app://pitchline/index.html'

/** Before the program is ready: the page's own scheme counts as a site of its own, with storage and workers. */
export function declareAppProtocol(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ])
}

/** Serves the page's folder under `app://pitchline/`, and nothing else under any address. */
export function setupAppProtocol(): void {
  const root = path.join(app.getAppPath(), 'dist', 'page')
  protocol.handle('app', async (request) => {
    const { host, pathname } = new URL(request.url)
    const found = host === 'pitchline' && request.method === 'GET' ? await readPageFile(root, pathname) : null
    if (!found) return new Response('There is no such page.', { status: 404, headers: pageHeaders })
    const body = new Uint8Array(found.bytes)
    const headers = { ...pageHeaders, 'content-type': found.type, 'cache-control': found.kept }
    return new Response(body, { headers })
  })
}
