/** Work with pauses, between two of which a Stop may be heard; gives what it makes at its end. */
export type InPieces<T> = Generator<void, T, void>
