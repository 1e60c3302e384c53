/** Work with pauses, between two of which a Stop may be heard; gives what it makes at its end. */
export type InPieces<T> = Generator<void, T, void>

/** Samples of a long list after which work on it pauses: some hundredths of a second where each costs much. */
export const samplesBetween = 2 ** 17

/** Does work in pieces at once. */
export function atOnce<T>(pieces: InPieces<T>): T {
  for (;;) {
    const piece = pieces.next()
    if (piece.done === true) return piece.value
  }
}
