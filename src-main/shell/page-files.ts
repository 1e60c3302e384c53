import { readFile, realpath } from 'node:fs/promises'
import path from 'node:path'

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.ttf': 'font/ttf',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
}

/** Plain names only: no dot in front (so no `..`), no `%`, backslash, NUL, colon or anything else that could mean more. */
const plainPath = /^\/(?:[\w-][\w.-]*\/)*[\w-][\w.-]*$/

/**
 * The file in the page's folder that a path of an address stands for, `null` where it stands for none: a path that is
 * not plain, or a kind of file that the page does not have. Pure: whether the file exists is found on reading.
 *
 * @example pageFileOf('/p', '/assets/a-1.js') // '/p/assets/a-1.js'
 */
export function pageFileOf(root: string, pathname: string): string | null {
  const wanted = pathname === '/' ? '/index.html' : pathname
  if (!plainPath.test(wanted) || !(path.extname(wanted) in types)) return null
  const file = path.join(root, ...wanted.split('/'))
  return isInside(root, file) ? file : null
}

function isInside(root: string, file: string): boolean {
  const relative = path.relative(root, file)
  return relative !== '' && !relative.startsWith('..') && !path.isAbsolute(relative)
}

/**
 * How long a browser may keep a file: what stands in the folder of hashed names never changes under its name, and what V8
 * has compiled of it is kept with it, which is half of a later start. The page itself is asked for each time.
 */
const keptOf = (pathname: string) =>
  /^\/assets\/[^/]*-[\w-]{8}\.\w+$/.test(pathname) ? 'public, max-age=31536000, immutable' : 'no-cache'

interface PageFile {
  readonly type: string
  /** Its `cache-control`. */
  readonly kept: string
  readonly bytes: Uint8Array
}

/** A file of the page, `null` where there is none of this path, or where a link leads out of the folder. */
export async function readPageFile(root: string, pathname: string): Promise<PageFile | null> {
  const file = pageFileOf(root, pathname)
  if (file === null) return null
  try {
    const [trueRoot, trueFile] = await Promise.all([realpath(root), realpath(file)])
    if (!isInside(trueRoot, trueFile)) return null
    return {
      type: types[path.extname(file)] ?? '',
      kept: keptOf(pathname),
      bytes: await readFile(trueFile),
    }
  } catch {
    return null
  }
}
