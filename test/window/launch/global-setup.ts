import { existsSync } from 'node:fs'
import path from 'node:path'
import { browserLacks, root, startDisplay, windowLacks } from './computer.ts'

/** A display for the real window, taken down at the end. Says in a line each what cannot be run here. */
export default async function setup(): Promise<() => void> {
  if (!existsSync(path.join(root, 'dist/page/index.html'))) {
    console.error('There is no page to look at in dist: build it with `npm run build`.')
    process.exit(1)
  }
  const display = await startDisplay()
  const lacking = { 'the page in a browser': browserLacks(), 'the real window': windowLacks() }
  for (const [what, lacks] of Object.entries(lacking)) {
    if (lacks !== null) console.warn(`Left out: ${what}, because ${lacks}.`)
  }
  return () => void display?.kill()
}
