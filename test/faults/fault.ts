/** A mistake planted in the engine: one place of one file written wrongly. */
export interface Fault {
  /** Below `shared-engine/`. */
  readonly file: string
  /** The sound text, which stands in the file exactly once. */
  readonly sound: string
  /** What is written instead. */
  readonly planted: string
  /** The test file that is there to notice it, where one is known. */
  readonly noticedIn?: string
}

/** A file's text with a fault planted; throws where the sound text does not stand there exactly once. */
export function withFault(text: string, { file, sound, planted }: Fault): string {
  const pieces = text.split(sound)
  if (pieces.length !== 2)
    throw new Error(`${file}: "${sound}" stands there ${pieces.length - 1} times, not once`)
  return pieces.join(planted)
}

/** Faults of one file, each as the sound text and what is written instead. */
export function faultsOf(file: string, ...pairs: readonly (readonly [string, string])[]): Fault[] {
  return pairs.map(([sound, planted]) => ({ file, sound, planted }))
}
