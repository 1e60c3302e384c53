import { startDisplay } from './computer.ts'

/** A display for the real window, taken down at the end. */
export default async function setup(): Promise<() => void> {
  const display = await startDisplay()
  return () => void display?.kill()
}
