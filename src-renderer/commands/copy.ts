/**
 * Copying a figure gives its full value, whether it has the focus or stands in the selection: what is shown is rounded
 * for reading, what is pasted should not be.
 */
export function copyFigure(event: ClipboardEvent): void {
  const selection = document.getSelection()
  const full = selection === null || selection.isCollapsed ? focusedFull() : selectedFull(selection)
  if (full === null || event.clipboardData === null) return
  event.clipboardData.setData('text/plain', full)
  event.preventDefault()
}

function focusedFull(): string | null {
  return document.activeElement?.closest<HTMLElement>('[data-full]')?.dataset['full'] ?? null
}

/** Only where the selection lies within one figure; a selected passage is copied as it reads. */
function selectedFull(selection: Selection): string | null {
  const { anchorNode, focusNode } = selection
  const figure = anchorNode?.parentElement?.closest<HTMLElement>('[data-full]')
  return figure?.contains(focusNode) === true ? (figure.dataset['full'] ?? null) : null
}
