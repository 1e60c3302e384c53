import type { Command } from './command.ts'

/** What a key press looks like to the table: a KeyboardEvent, or a test's stand-in for one. */
interface Press {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
  readonly shiftKey: boolean
}

/** Whether a press is the key combination named (`Mod+Shift+Z`). */
export function isPress(combination: string, press: Press, mac: boolean): boolean {
  const parts = combination.split('+')
  const key = parts.at(-1) ?? ''
  const mod = mac ? press.metaKey : press.ctrlKey
  const otherMod = mac ? press.ctrlKey : press.metaKey
  if (otherMod || mod !== parts.includes('Mod') || press.altKey !== parts.includes('Alt')) return false
  // A sign such as ? needs Shift on some keyboards and not on others: the sign itself decides.
  if (key.length > 1 || /[a-z0-9]/i.test(key)) {
    if (press.shiftKey !== parts.includes('Shift')) return false
  }
  return press.key.toLowerCase() === key.toLowerCase()
}

/** A single printing key without Ctrl, Alt or Command: not while typing, and not where a person turned them off. */
export function isSingleKey(combination: string): boolean {
  return combination.length === 1
}

/** The command that a press asks for; null for none. */
export function commandOf(
  commands: readonly Command[],
  press: Press,
  mac: boolean,
  singleKeys: boolean,
): Command | null {
  const asked = (combination: string) =>
    isPress(combination, press, mac) && (singleKeys || !isSingleKey(combination))
  return commands.find((command) => command.keys.some(asked)) ?? null
}

/** As it is printed in the list of shortcuts: `Ctrl+Shift+Z`, or `⇧⌘Z` on a Mac. */
export function keyLabel(combination: string, mac: boolean): string {
  if (!mac) return combination.replace('Mod', 'Ctrl')
  const signs: Record<string, string> = { Mod: '⌘', Shift: '⇧', Alt: '⌥' }
  return combination
    .split('+')
    .map((part) => signs[part] ?? part)
    .join('')
}
