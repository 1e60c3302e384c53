import path from 'node:path'

/**
 * A name with the ending that its kind has: some systems' dialogs add none. Left as it was typed where it has an ending,
 * or where the whole name is taken: nobody was asked whether that file may be overwritten.
 */
export function withEnding(file: string, ending: string, isTaken: (file: string) => boolean): string {
  const whole = `${file}${ending}`
  return path.extname(file) !== '' || isTaken(whole) ? file : whole
}
