/**
 * Puts the cursor into an entry's field, its number marked, and brings the field with its name and its words into view.
 * The part that it belongs to has to be shown already.
 */
export function putCursorInto(path: string): void {
  const frame = frameOf(path)
  const control = frame?.querySelector<HTMLElement>('input, select, textarea')
  control?.focus({ preventScroll: true })
  if (control instanceof HTMLInputElement) control.select()
  frame?.scrollIntoView({ block: 'center' })
}

/** Brings an entry's field into view where it is not; the focus stays where it is. */
export function bringIntoView(path: string): void {
  frameOf(path)?.scrollIntoView({ block: 'nearest' })
}

const frameOf = (path: string) => document.querySelector<HTMLElement>(`[data-field="${CSS.escape(path)}"]`)
