/** Recent files of a browser that can write to them: their places live in its database, newest first. */

const most = 12
const store = 'recent'

interface RecentPlace {
  readonly id: string
  readonly name: string
  readonly place: FileSystemFileHandle
}

/** Places the browser lets us read again only after asking the person, on a click. */
interface Asking {
  requestPermission?(wanted: { mode: 'readwrite' }): Promise<PermissionState>
}

function settled<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((done, failed) => {
    request.onsuccess = () => done(request.result)
    request.onerror = () => failed(request.error ?? new Error('the database failed'))
  })
}

async function objects(mode: IDBTransactionMode): Promise<IDBObjectStore> {
  const opening = indexedDB.open('pitchline', 1)
  opening.onupgradeneeded = () => opening.result.createObjectStore(store)
  return (await settled(opening)).transaction(store, mode).objectStore(store)
}

/** An empty list where the database is forbidden: a convenience, not worth a question. */
export async function recentPlaces(): Promise<readonly RecentPlace[]> {
  try {
    return ((await settled((await objects('readonly')).get('list'))) as RecentPlace[] | undefined) ?? []
  } catch {
    return []
  }
}

export async function addRecent(place: FileSystemFileHandle): Promise<void> {
  const others: RecentPlace[] = []
  for (const one of await recentPlaces()) if (!(await one.place.isSameEntry(place))) others.push(one)
  const added = { id: crypto.randomUUID(), name: place.name, place }
  await write([added, ...others].slice(0, most))
}

export const clearRecent = (): Promise<void> => write([])

async function write(list: readonly RecentPlace[]): Promise<void> {
  try {
    await settled((await objects('readwrite')).put(list, 'list'))
  } catch {
    // As above.
  }
}

/** Asks the browser's question about the file, where it has one. */
export async function mayUse(place: FileSystemFileHandle): Promise<boolean> {
  const asking = place as FileSystemFileHandle & Asking
  return (await asking.requestPermission?.({ mode: 'readwrite' })) !== 'denied'
}
