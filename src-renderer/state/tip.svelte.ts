/** The one tip of the window: what it says and what it belongs to. */
export class Tip {
  anchor = $state.raw<HTMLElement | null>(null)
  text = $state.raw('')
  #leaving: ReturnType<typeof setTimeout> | undefined

  show(anchor: HTMLElement, text: string): void {
    this.keep()
    this.anchor = anchor
    this.text = text
  }

  /** The pointer reached the tip: it may be read and selected. */
  keep(): void {
    clearTimeout(this.#leaving)
  }

  /** A moment's grace, so that the pointer can reach the tip. */
  hideSoon(): void {
    clearTimeout(this.#leaving)
    this.#leaving = setTimeout(() => this.hide(), 150)
  }

  hide(): void {
    clearTimeout(this.#leaving)
    this.anchor = null
  }
}
