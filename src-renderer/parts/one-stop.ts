/** How far an arrow goes among the buttons of a list. */
const steps: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }

/**
 * Makes a list of buttons one stop of the Tab key: arrows, Home and End go from button to button, and Tab comes back to
 * the one that had the focus last. For lists too long to be tabbed through; an attachment of the element round them.
 *
 * @returns what ends it
 */
export function oneStop(list: Element): () => void {
  const buttons = () => [...list.querySelectorAll<HTMLElement>('button')]
  const isShown = (button: HTMLElement) => button.getClientRects().length > 0
  let current: HTMLElement | null = null

  function stopAt(wanted: HTMLElement | null): void {
    const all = buttons()
    current = wanted !== null && all.includes(wanted) ? wanted : (all[0] ?? null)
    for (const button of all) button.tabIndex = button === current ? 0 : -1
  }

  function onFocus({ target }: Event): void {
    const button = target instanceof Element ? target.closest('button') : null
    if (button !== null && button !== current) stopAt(button)
  }

  function onKey(event: Event): void {
    if (!(event instanceof KeyboardEvent) || event.ctrlKey || event.altKey || event.metaKey) return
    const shown = buttons().filter(isShown)
    const here = current === null ? -1 : shown.indexOf(current)
    const to =
      event.key === 'Home' ? 0 : event.key === 'End' ? shown.length - 1 : here + (steps[event.key] ?? NaN)
    if (Number.isNaN(to) || here < 0) return
    event.preventDefault()
    shown[Math.max(0, Math.min(shown.length - 1, to))]?.focus()
  }

  const changes = new MutationObserver(() => stopAt(current))
  changes.observe(list, { childList: true, subtree: true })
  // Folded away with its row, the stop goes to one that can be reached.
  const size = new ResizeObserver(() => {
    if (current !== null && !isShown(current)) stopAt(null)
  })
  size.observe(list)
  list.addEventListener('focusin', onFocus)
  list.addEventListener('keydown', onKey)
  stopAt(null)
  return () => {
    changes.disconnect()
    size.disconnect()
    list.removeEventListener('focusin', onFocus)
    list.removeEventListener('keydown', onKey)
  }
}
