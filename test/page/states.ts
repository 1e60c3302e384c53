import { readFileSync } from 'node:fs'
import { readStoredBuildText, type StoredBuild } from '../../shared-engine/index.ts'
import type { Host } from '../../src-renderer/host/host.ts'
import type { QuestionStateClass } from '../../src-renderer/state/question.ts'
import { Workspace } from '../../src-renderer/state/workspace.svelte.ts'

const demoIds = ['quick-sled-puller', 'hut-hauler', 'culvert-crawler']
const demos = demoIds.map((id) => ({ id, text: readFileSync(`examples/${id}.build.json`, 'utf8') }))

/** A demo build as it is stored. */
export function demoBuild(id: string): StoredBuild {
  const read = readStoredBuildText(demos.find((one) => one.id === id)?.text ?? '')
  if (!read.ok) throw new Error(`${id} is no build`)
  return read.value
}

/** A workspace without a window: the demo *Stoat* is open, files come from what `open` gives. */
export function workspaceWith(
  states: readonly QuestionStateClass[],
  open: Host['open'] = () => Promise.resolve(null),
) {
  const released: string[] = []
  const host: Pick<Host, 'demos' | 'open' | 'release'> = {
    demos,
    open,
    release: (handle) => void released.push(handle),
  }
  const workspace = new Workspace(host as Host, [{ id: 'asked', states }])
  workspace.session.open(demoBuild('quick-sled-puller'), true)
  return { workspace, released }
}
