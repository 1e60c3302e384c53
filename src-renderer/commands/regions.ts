/** Regions of the page in reading order: each is an element with `data-region`. */
const focusable =
  'button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea, a[href], [tabindex]:not([tabindex="-1"])'

/** Whether b is in a, or comes after it in the page. */
const isUpTo = (a: Element, b: Element) =>
  a.contains(b) || (a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0

/**
 * Moves the focus to the next heading of the region that has the focus, of the answer where none has: to the button in it
 * where the heading folds what is under it. From the last one on to the first, and back.
 */
export function nextHeading(step: 1 | -1): void {
  const active = document.activeElement ?? document.body
  const region = active.closest('[data-region]') ?? document.querySelector('[data-region=questions]')
  const headings = [...(region?.querySelectorAll<HTMLElement>('h2, h3') ?? [])].filter(
    (heading) => heading.offsetParent !== null && !heading.matches('.for-readers'),
  )
  const past = headings.filter((heading) => isUpTo(heading, active)).length - 1
  const isOn = headings[past]?.contains(active) === true
  const to = step === 1 || isOn ? past + step : past
  const next = headings[(to + headings.length) % headings.length]
  if (next === undefined) return
  const button = next.querySelector<HTMLElement>('button:not(:disabled)')
  if (button === null) next.tabIndex = -1
  ;(button ?? next).focus()
}

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
