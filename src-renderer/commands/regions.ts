/** Regions of the page in reading order: each is an element with `data-region`. */
const focusable =
  'button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea, a[href], [tabindex]:not([tabindex="-1"])'

/** Moves the focus to the first control of the next region that has one. */
export function nextRegion(step: 1 | -1): void {
  const regions = [...document.querySelectorAll<HTMLElement>('[data-region]')].filter(
    (region) => region.offsetParent !== null && region.querySelector(focusable) !== null,
  )
  const now = regions.findIndex((region) => region.contains(document.activeElement))
  const next = regions[(now + step + regions.length) % regions.length]
  const controls = [...(next?.querySelectorAll<HTMLElement>(focusable) ?? [])]
  controls.find((control) => control.offsetParent !== null && control.tabIndex >= 0)?.focus()
}
