import { getContext, setContext } from 'svelte'
import type { Host } from '../host/host.ts'
import { Ask } from './ask.svelte.ts'
import { Files } from './files.svelte.ts'
import { Notices } from './notice.svelte.ts'
import { Operating } from './operating.svelte.ts'
import { Session } from './session.svelte.ts'
import { Tip } from './tip.svelte.ts'
import { View } from './view.svelte.ts'

/** Lists and cards that can be opened over the page. */
export type Sheet = 'shortcuts' | 'recent' | 'about' | 'demos'

/** All that the page knows, as a few small classes. Components get it with {@link useWorkspace}. */
export class Workspace {
  readonly session = new Session()
  readonly operating = new Operating()
  readonly view = new View()
  readonly ask = new Ask()
  readonly notices = new Notices()
  readonly tip = new Tip()
  readonly files: Files
  sheet = $state.raw<Sheet | null>(null)
  readonly host: Host

  constructor(host: Host) {
    this.host = host
    this.files = new Files(host, this.session, this.ask, this.notices, () => this.opened())
  }

  get isMac(): boolean {
    return this.host.facts.platform === 'mac'
  }

  /** Another build was opened: what belonged to the last one is let go. */
  private opened(): void {
    this.operating.reset()
    this.view.limit = null
    this.view.closeWorkings()
  }
}

const key = Symbol('workspace')

export function provideWorkspace(workspace: Workspace): Workspace {
  return setContext(key, workspace)
}

export function useWorkspace(): Workspace {
  return getContext<Workspace>(key)
}
