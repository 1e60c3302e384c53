/** What is asked of a file that was picked or dropped. */
export type PickedFile = Pick<File, 'name' | 'size' | 'arrayBuffer'> & Partial<Pick<File, 'slice'>>

/** Bytes that are moved in one go: some milliseconds, also where memory has to be had for them. */
const pieceBytes = 2 ** 21

/** Lets the window do what waits. */
const pause = () =>
  new Promise<void>((resume) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      port1.close()
      resume()
    }
    port2.postMessage(null)
  })

/** Copies that were made while a file was read: each is given away once. */
const copies = new WeakMap<Uint8Array, Uint8Array>()

/**
 * The bytes of a file, read piece by piece: of a long one the window would stand still for each that comes at once. While a
 * piece is put in its place, the host reads the next.
 *
 * @param spare whether they are put in a copy too, for {@link copyOf}
 * @throws what the host says of a file that cannot be had
 */
export async function bytesOf(file: PickedFile, spare = false): Promise<Uint8Array> {
  const { size } = file
  if (size <= pieceBytes || file.slice === undefined) return new Uint8Array(await file.arrayBuffer())
  const pieceAt = (from: number) => file.slice?.(from, from + pieceBytes).arrayBuffer()
  const bytes = new Uint8Array(size)
  const copy = spare ? new Uint8Array(size) : null
  let next = pieceAt(0)
  for (let from = 0; from < size; from += pieceBytes) {
    const piece = new Uint8Array((await next) ?? new ArrayBuffer())
    if (from + pieceBytes < size) next = pieceAt(from + pieceBytes)
    bytes.set(piece, from)
    copy?.set(piece, from)
  }
  if (copy !== null) copies.set(bytes, copy)
  return bytes
}

/** A copy that can be given away: the one that was made already, else made piece by piece. */
export async function copyOf(bytes: Uint8Array): Promise<Uint8Array> {
  const known = copies.get(bytes)
  if (copies.delete(bytes) && known !== undefined) return known
  const copy = new Uint8Array(bytes.length)
  for (let from = 0; from < bytes.length; from += pieceBytes) {
    if (from > 0) await pause()
    copy.set(bytes.subarray(from, from + pieceBytes), from)
  }
  return copy
}
