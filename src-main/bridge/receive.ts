import { failed, type Result } from '../../shared-engine/mistakes/mistake.ts'
import { contract, type Gives, type Takes } from './contract.ts'
import type { Verb } from './channels.ts'

/** Who asks: as much of Electron's event as is looked at, so that tests can stand in for it. */
export interface Asker {
  readonly sender: { readonly id: number; readonly mainFrame: unknown }
  /** `null` where the frame is gone already. */
  readonly senderFrame: { readonly url: string } | null
}

/** What each verb does, for the window that asks. */
export type Handlers = {
  readonly [V in Verb]: (owner: number, ...words: Takes<V>) => Promise<Result<Gives<V>>> | Result<Gives<V>>
}

/** As much of Electron's `ipcMain` as is used. */
export interface Receiver {
  handle(channel: string, answer: (event: Asker, ...words: unknown[]) => Promise<unknown>): void
}

const pageOrigin = 'app://pitchline/'

/** Is this one of our windows' own page, not a frame in it, another site, or a window that is not ours? */
export function isOurPage(event: Asker, isOurWindow: (id: number) => boolean): boolean {
  const { sender, senderFrame } = event
  if (!senderFrame || senderFrame !== sender.mainFrame) return false
  return isOurWindow(sender.id) && senderFrame.url.startsWith(pageOrigin)
}

function refused(why: string): Result<never> {
  return failed([
    { code: 'request-refused', path: '', value: why, allowed: '', kept: 'everything as it was' },
  ])
}

/**
 * Answers every verb of the contract, and only those. A sender that is not our page, or arguments that do not fit, are
 * refused before anything happens. What a handler throws is a bug of ours: it is logged here, and the page hears
 * of it without the details.
 */
export function receive(receiver: Receiver, handlers: Handlers, isOurWindow: (id: number) => boolean): void {
  for (const verb of Object.keys(contract) as Verb[]) {
    receiver.handle(contract[verb].channel, (event, ...words) =>
      answer(verb, handlers, isOurPage(event, isOurWindow), event.sender.id, words),
    )
  }
}

async function answer(verb: Verb, handlers: Handlers, isOurs: boolean, owner: number, words: unknown[]) {
  if (!isOurs) return refused(`${verb}, from elsewhere`)
  const understood = contract[verb].takes.safeParse(words)
  if (!understood.success) return refused(`${verb}, with what it does not take`)
  try {
    const handler = handlers[verb] as (owner: number, ...words: unknown[]) => unknown
    return await handler(owner, ...(understood.data as unknown[]))
  } catch (thrown) {
    console.error(`bridge: ${verb}`, thrown)
    return failed([
      { code: 'own-fault', path: '', value: verb, allowed: '', kept: 'your work in this window' },
    ])
  }
}
