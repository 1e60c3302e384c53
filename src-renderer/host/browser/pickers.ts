/**
 * The browser's ways to a file. Where it has pickers that can write (`showSaveFilePicker`), a build is saved in place;
 * elsewhere it is chosen with an input and saved as a download. `null`: the person cancelled.
 */

interface PickerType {
  readonly description: string
  readonly accept: Record<string, readonly string[]>
}

/** The part of the File System Access draft that is used; TypeScript has no types for it. */
interface Pickers {
  showOpenFilePicker?(options: { types: readonly PickerType[] }): Promise<FileSystemFileHandle[]>
  showSaveFilePicker?(options: {
    suggestedName: string
    types: readonly PickerType[]
  }): Promise<FileSystemFileHandle>
}

const pickers = () => window as Window & Pickers
const builds: PickerType = { description: 'Builds', accept: { 'application/json': ['.json'] } }

/** A file and, where the browser can write to it again, the way to do so. */
export interface Picked {
  readonly file: File
  readonly place: FileSystemFileHandle | null
}

export async function pickBuild(): Promise<Picked | null> {
  const { showOpenFilePicker } = pickers()
  if (!showOpenFilePicker) return pickWithInput()
  const [place] = (await orNull(showOpenFilePicker.call(window, { types: [builds] }))) ?? []
  return place ? { file: await place.getFile(), place } : null
}

function pickWithInput(): Promise<Picked | null> {
  const input = document.createElement('input')
  input.type = 'file'
  input.accept = '.json,application/json'
  return new Promise((picked) => {
    input.addEventListener('change', () => {
      const file = input.files?.[0]
      picked(file ? { file, place: null } : null)
    })
    input.addEventListener('cancel', () => picked(null))
    input.click()
  })
}

/** Where to save, `'download'` where the browser has no such picker. */
export async function pickPlace(
  suggestedName: string,
  type: string,
): Promise<FileSystemFileHandle | 'download' | null> {
  const { showSaveFilePicker } = pickers()
  if (!showSaveFilePicker) return 'download'
  const ending = /\.[a-z]+$/.exec(suggestedName)?.[0] ?? '.json'
  const types = [{ description: ending.slice(1).toUpperCase(), accept: { [type]: [ending] } }]
  return orNull(showSaveFilePicker.call(window, { suggestedName, types }))
}

export function download(name: string, content: Blob): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(content)
  link.download = name
  link.click()
  // Not at once: the browser still reads it.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000)
}

/** Writes all or nothing: the browser puts the new content in place on `close`. */
export async function writeTo(place: FileSystemFileHandle, content: Blob): Promise<void> {
  const writable = await place.createWritable()
  try {
    await writable.write(content)
  } catch (thrown) {
    await writable.abort().catch(() => undefined)
    throw thrown
  }
  await writable.close()
}

async function orNull<T>(answer: Promise<T>): Promise<T | null> {
  try {
    return await answer
  } catch (thrown) {
    if (thrown instanceof DOMException && thrown.name === 'AbortError') return null
    throw thrown
  }
}
