import { expect, test } from 'vitest'
import { DriveWork } from '../../src-renderer/questions/hot/drive.svelte.ts'
import { workspaceWith } from './states.ts'

test('a drive is kept with the build as one step to undo, and is known again as kept', () => {
  const { workspace } = workspaceWith([DriveWork])
  const drive = workspace.of(DriveWork)
  expect(drive.isKept).toBe(false)
  expect(drive.keep()).toEqual([])
  expect(drive.isKept).toBe(true)
  expect(workspace.session.stored.service?.pattern?.rows.length).toBe(drive.rows.length)
  workspace.session.history.undo()
  expect(drive.isKept).toBe(false)
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
