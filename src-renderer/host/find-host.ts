import type { Bridge } from '../../src-main/bridge/contract.ts'
import { browserHost } from './browser/browser-host.ts'
import type { Host } from './host.ts'
import { windowHost } from './window-host.ts'

/** What this page stands in: the desktop window where its bridge is there, else a browser. */
export async function findHost(): Promise<Host> {
  const { pitchline } = window as Window & { pitchline?: Bridge }
  return pitchline ? windowHost(pitchline) : browserHost()
}
