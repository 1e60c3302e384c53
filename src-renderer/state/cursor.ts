/**
 * Puts the cursor into an entry's field, its number marked, and brings the field with its name and its words into view.
 * The part that it belongs to has to be shown already.
 */
export function putCursorInto(path: string): void {
  const frame = document.querySelector<HTMLElement>(`[data-field="${CSS.escape(path)}"]`)
  const control = frame?.querySelector<HTMLElement>('input, select, textarea')
  control?.focus({ preventScroll: true })
  if (control instanceof HTMLInputElement) control.select()
  frame?.scrollIntoView({ block: 'center' })
}
