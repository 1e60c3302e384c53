import { printable } from '../../shared-engine/mistakes/shown.ts'
import { exit } from './exit.ts'
import { mistake, report } from './trouble.ts'

/** Where a command writes: results and troubles apart, so that a pipe carries results alone. */
export interface Io {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  /** Shows how far long work is, on one line that is written over; '' takes it away. Only where a terminal is there. */
  readonly progress?: (line: string) => void
}

/** What a command says, handed on to where it is written. Whatever came from a file, it cannot drive a terminal. */
export function writtenBy(out: (text: string) => void, err: (text: string) => void): Io {
  return { out: (text) => out(printable(text)), err: (text) => err(printable(text)) }
}

/**
 * The process's own streams. A reader that has seen enough closes the pipe (`| head`): that is no error, and what was
 * still to be written is dropped without a word.
 */
export function processIo(): Io {
  const write = (text: string) => void process.stderr.write(text)
  const io = writtenBy((text) => void process.stdout.write(text), write)
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit()
    report({ ...io, out: () => {} }, 'standard output', [
      mistake('cannot-write', { value: `the system says ${error.code ?? error.message}` }),
    ])
    process.exit(exit.unreadable)
  })
  // Where even trouble cannot be reported, the exit code has to do.
  process.stderr.on('error', () => process.exit())
  return {
    ...io,
    ...(process.stderr.isTTY ? { progress: (line) => write(`\r\u001b[K${line}`) } : {}),
  }
}
