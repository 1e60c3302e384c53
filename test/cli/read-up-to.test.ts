import { execFileSync, spawn } from 'node:child_process'
import { once } from 'node:events'
import { closeSync, constants, openSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { readUpTo } from '../../src-main/cli/read-up-to.ts'
import { temporaryFolder } from './command.ts'

describe('reading a file or stream', () => {
  const folder = temporaryFolder()

  test.each([
    [3, 'abc'],
    [100, 'abcdef'],
  ])('up to %d bytes', (most, text) => {
    const file = path.join(folder(), 'six')
    writeFileSync(file, 'abcdef')
    const open = openSync(file, 'r')
    expect(Buffer.from(readUpTo(open, most)).toString()).toBe(text)
    closeSync(open)
  })

  // Node never hands such a stream on to a child, other programs do.
  test.skipIf(process.platform === 'win32')(
    'waits for what a stream that does not wait has later',
    async () => {
      const pipe = path.join(folder(), 'pipe')
      execFileSync('mkfifo', [pipe])
      const script =
        'exec 3<>"$0"; echo open; sleep 0.2; printf first >&3; sleep 0.2; printf second >&3; sleep 0.1'
      const writer = spawn('sh', ['-c', script, pipe], { stdio: ['ignore', 'pipe', 'inherit'] })
      await once(writer.stdout, 'data')
      const open = openSync(pipe, constants.O_RDONLY | constants.O_NONBLOCK)
      expect(Buffer.from(readUpTo(open, 100)).toString()).toBe('firstsecond')
      closeSync(open)
    },
  )
})
