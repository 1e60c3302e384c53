import path from 'node:path'

/**
 * The build named on a command line of the program, as a full path; `null` where none is. Flags are Chromium's, and
 * an unpackaged program is started with its own folder as the first word.
 *
 * @example fileNamedBy(['electron', '--flag', '.', 'sled.build.json'], '/home/a', false) // '/home/a/sled.build.json'
 */
export function fileNamedBy(words: readonly string[], folder: string, isPackaged: boolean): string | null {
  const plain = words.slice(1).filter((word) => !word.startsWith('-'))
  const named = isPackaged ? plain[0] : plain[1]
  return named === undefined || named === '' ? null : path.resolve(folder, named)
}
