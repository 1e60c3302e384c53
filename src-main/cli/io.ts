/** Where a command writes: results and troubles apart, so that a pipe carries results alone. */
export interface Io {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
}

/**
 * The process's own streams. A reader that has seen enough closes the pipe (`| head`): that is no error, and what was
 * still to be written is dropped without a word.
 */
export function processIo(): Io {
  const quiet = (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
    process.exit()
  }
  process.stdout.on('error', quiet)
  process.stderr.on('error', quiet)
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
  }
}
