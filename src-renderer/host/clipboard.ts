/** Puts text on the clipboard; by an unseen field where the clipboard itself is not to be had. True where it worked. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text)
    return true
  } catch {
    const field = document.createElement('textarea')
    field.value = text
    field.className = 'for-readers'
    document.body.append(field)
    const before = document.activeElement
    field.select()
    const copied = document.execCommand('copy')
    field.remove()
    if (before instanceof HTMLElement || before instanceof SVGElement) before.focus()
    return copied
  }
}
