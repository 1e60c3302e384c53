import { expect, test } from 'vitest'
import { completeBuild } from '../../../shared-engine/entries/read.ts'
import type { Pattern } from '../../../shared-engine/drive/drive.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import { DriveUnderWay, runDrive } from '../../../shared-engine/drive/run.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'

const build = completeBuild(plainBuild())
/** Demo data: sets off, coasts to a stop, sets off again. */
const pattern: Pattern = {
  name: 'demo: pauses',
  notes: '',
  rows: [plainRow('throttle', 0.6, 4), plainRow('speed', 0, 6), plainRow('speed', 1, 5)],
}
const whole = runDrive(build, pattern)

test.each([0.01, 0.37, 4, 20])('a drive that is paused every %d s is the drive in one piece', (pause) => {
  const drive = new DriveUnderWay(build, pattern)
  while (!drive.isOver) drive.until(drive.time + pause)
  expect(drive.result()).toEqual(whole)
})

test('a drive that is broken off says so, and has what came of the time driven', () => {
  const drive = new DriveUnderWay(build, pattern)
  drive.until(7)
  const run = drive.result()
  expect(run.end).toBe('stopped')
  expect(run.seconds).toBeGreaterThanOrEqual(7)
  expect(run.seconds).toBeLessThan(15)
  expect(run.metres).toBeLessThan(whole.metres)
})

test('a drive is followed for so many steps and no further', () => {
  const steps = 5
  const run = runDrive(build, pattern, { steps })
  expect(run.end).toBe('too-long')
  expect(run.seconds).toBeGreaterThan(0)
  expect(run.seconds).toBeLessThan(15)
  // A sample for each step and each kink.
  expect(run.series.length).toBeLessThanOrEqual(2 * steps + 2)
})
