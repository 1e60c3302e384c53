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

/**
 * The bytes of a file, read piece by piece: of a long one the window would stand still for each that comes at once.
 *
 * @throws what the host says of a file that cannot be had
 */
export async function bytesOf(file: PickedFile): Promise<Uint8Array> {
  if (file.size <= pieceBytes || file.slice === undefined) return new Uint8Array(await file.arrayBuffer())
  const bytes = new Uint8Array(file.size)
  for (let from = 0; from < file.size; from += pieceBytes)
    bytes.set(new Uint8Array(await file.slice(from, from + pieceBytes).arrayBuffer()), from)
  return bytes
}

/** A copy that can be given away, made piece by piece. */
export async function copyOf(bytes: Uint8Array): Promise<Uint8Array> {
  const copy = new Uint8Array(bytes.length)
  for (let from = 0; from < bytes.length; from += pieceBytes) {
    if (from > 0) await pause()
    copy.set(bytes.subarray(from, from + pieceBytes), from)
  }
  return copy
}
