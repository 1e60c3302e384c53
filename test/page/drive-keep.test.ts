import { expect, test } from 'vitest'
import { demoPatterns } from '../../shared-engine/drive/demos.ts'
import { DriveWork } from '../../src-renderer/questions/hot/drive.svelte.ts'
import { workspaceWith } from './states.ts'

test('a drive is kept with the build as one step to undo, and is known again as kept', () => {
  const { workspace } = workspaceWith([DriveWork])
  const drive = workspace.of(DriveWork)
  const [preset] = demoPatterns
  if (preset === undefined) throw new Error('there are presets')
  expect([drive.isOwn, drive.isKept]).toEqual([true, true])
  drive.take(preset)
  expect([drive.isOwn, drive.isKept]).toEqual([false, false])
  expect(drive.keep()).toEqual([])
  expect([drive.isOwn, drive.isKept]).toEqual([true, true])
  expect(workspace.session.stored.service?.pattern).toMatchObject({ name: preset.name })
  expect(drive.pattern.rows).toEqual(preset.rows)
  workspace.session.history.undo()
  expect(drive.pattern.name).not.toBe(preset.name)
})

test('editing the build’s own drive leaves the build alone until it is kept', () => {
  const { workspace } = workspaceWith([DriveWork])
  const drive = workspace.of(DriveWork)
  const [first] = drive.rows
  if (first === undefined) throw new Error('the build has a drive')
  expect(drive.setRow(first.id, { seconds: 77 }, null)).toBe('')
  expect(drive.pattern.rows[0]?.seconds).toBe(77)
  expect(drive.rows[0]?.id).toBe(first.id)
  expect(drive.pattern.name).toMatch(/, changed$/)
  expect(workspace.session.isDirty).toBe(false)
  expect(drive.keep()).toEqual([])
  expect(drive.pattern.name).not.toMatch(/, changed$/)
  expect(drive.pattern.rows[0]?.seconds).toBe(77)
  expect(workspace.session.isDirty).toBe(true)
})

test('a drive of more rows than a build keeps is refused in one sentence, and stays to be driven', () => {
  const { workspace } = workspaceWith([DriveWork])
  const drive = workspace.of(DriveWork)
  const before = workspace.session.stored
  const rows = Array.from({ length: 201 }, (_, at) => ({ seconds: 1 + at, throttlePercent: 50 }))
  const file = { format: 'pitchline-pattern', version: 2, name: 'long', rows }
  expect(drive.takeFile(new TextEncoder().encode(JSON.stringify(file)))).toEqual([])
  expect(drive.keep()).toEqual([
    'A build keeps a drive of at most 200 rows, and this one has 201: it can be driven here, but not kept.',
  ])
  expect(workspace.session.stored).toBe(before)
  expect([drive.isOwn, drive.pattern.name, drive.pattern.rows.length]).toEqual([false, 'long', 201])
  // One row less, and it is kept.
  drive.remove(drive.rows[200]?.id ?? NaN)
  expect(drive.keep()).toEqual([])
  expect(workspace.session.stored.service?.pattern?.rows).toHaveLength(200)
})

test('all rows are repeated one after the other, undone by name in the drive alone', () => {
  const { workspace } = workspaceWith([DriveWork])
  const drive = workspace.of(DriveWork)
  const before = drive.pattern.rows
  drive.repeat(3)
  expect(drive.pattern.rows).toEqual([...before, ...before, ...before])
  expect(new Set(drive.rows.map(({ id }) => id)).size).toBe(3 * before.length)
  expect(drive.undoName).toBe('repeat 3 times')
  drive.undo()
  expect(drive.pattern.rows).toEqual(before)
  expect(workspace.session.isDirty).toBe(false)
})
