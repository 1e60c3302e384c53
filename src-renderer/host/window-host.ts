import type { Result } from '../../shared-engine/mistakes/mistake.ts'
import type { Bridge } from '../../src-main/bridge/contract.ts'
import { demos } from './demos.ts'
import type { Host, HostFacts } from './host.ts'

/** The desktop window: every wish goes through the bridge. */
export async function windowHost(bridge: Bridge): Promise<Host> {
  const facts: HostFacts = { kind: 'window', ...valueOr(await bridge.facts(), unknownFacts) }
  return {
    facts,
    demos,
    start: async () => valueOr(await bridge.start(), { opened: null, recovered: [], afterCrash: false }),
    open: () => cancelled(bridge.open()),
    read: (handle) => bridge.read(handle),
    openDropped: (file) => bridge.openDropped(file),
    release: (handle) => void bridge.release(handle),
    recent: async () => valueOr(await bridge.recent(), []),
    openRecent: (id) => bridge.openRecent(id),
    clearRecent: async () => void (await bridge.clearRecent()),
    save: (handle, saved, fingerprint) => bridge.save(handle, saved, fingerprint),
    saveAs: (name, saved) => cancelled(bridge.saveAs(plainName(name), saved)),
    exportFile: (kind, name, content) => cancelled(bridge.exportFile(kind, plainName(name), content)),
    exportPdf: (paper, name) => cancelled(bridge.exportPdf(paper, plainName(name))),
    keep: (work) => bridge.keep(work),
    forget: async () => void (await bridge.forget()),
    discardRecovered: async (id) => void (await bridge.discardRecovered(id)),
    show: (state) => void bridge.show(state),
    newWindow: () => void bridge.newWindow(),
    answerClose: (close) => void bridge.answerClose(close),
    listen: (listener) =>
      bridge.listen((event) => {
        listener(event)
        // Said once the question is put: a page that hangs, or fails at it, does not get here.
        if (event.kind === 'close-asked') void bridge.heardClose()
      }),
  }
}

const unknownFacts = { platform: 'linux', version: '', commit: '', runtime: '' } as const

function valueOr<T>(result: Result<T>, otherwise: T): T {
  return result.ok ? result.value : otherwise
}

/** An answer whose value may be `null` for "cancelled", as the page expects it: `null` itself. */
async function cancelled<T>(answer: Promise<Result<T | null>>): Promise<Result<T> | null> {
  const result = await answer
  if (!result.ok) return result
  return result.value === null ? null : { ok: true, value: result.value }
}

/** A build's name may hold anything; a file's may not. */
function plainName(name: string): string {
  const plain = name
    .replace(/[/\\:*?"<>|\p{Cc}]+/gu, '-')
    .trim()
    .slice(0, 100)
  return plain === '' ? 'build' : plain
}
