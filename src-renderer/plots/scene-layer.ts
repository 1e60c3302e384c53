import { pagePalette, sceneElements } from '../../shared-engine/draw/svg.ts'
import { svgMarkup, type SvgElement } from '../../shared-engine/draw/svg-element.ts'
import type { Scene } from '../../shared-engine/draw/scene.ts'
import type { LimitId } from '../../shared-engine/limits/id.ts'

const namespace = 'http://www.w3.org/2000/svg'

/** What each group shows now. */
const painted = new WeakMap<Element, readonly SvgElement[]>()
/** Groups in which shapes of a limit are marked. */
const marked = new WeakSet<Element>()

/**
 * Puts a scene's shapes into an SVG group. The first time as markup, which the browser parses several times faster than
 * elements are made one by one; from then on only what differs is changed, since most edits leave most of a drawing as
 * it is and every element made anew is styled, laid out and painted anew. Texts are escaped where markup is written.
 */
export function paintScene(layer: Element, scene: Scene, prefix: string): void {
  const after = sceneElements(scene, pagePalette, prefix)
  const before = painted.get(layer)
  painted.set(layer, after)
  if (before === undefined) layer.innerHTML = svgMarkup(after, '')
  else changeInside(layer, before, after)
}

/** Marks the shapes of one limit, and no others. */
export function markLimit(layer: Element, limit: LimitId | null): void {
  if (limit === null && !marked.has(layer)) return
  if (limit === null) marked.delete(layer)
  else marked.add(layer)
  for (const shape of layer.querySelectorAll('[data-limit], .chosen')) {
    shape.classList.toggle('chosen', limit !== null && shape.getAttribute('data-limit') === limit)
  }
}

/**
 * Changes what stands inside an element. Where there are more or fewer shapes than before (a tick that comes or goes),
 * those from both ends go on as the same ones for as long as they are of one kind.
 */
function changeInside(parent: Element, before: readonly SvgElement[], after: readonly SvgElement[]): void {
  const most = Math.min(before.length, after.length)
  let head = 0
  while (head < most && before[head]?.tag === after[head]?.tag) head += 1
  let tail = 0
  while (tail < most - head && before.at(-1 - tail)?.tag === after.at(-1 - tail)?.tag) tail += 1
  let node = parent.firstElementChild
  const step = (): Element | null => {
    const here = node
    node = here?.nextElementSibling ?? null
    return here
  }
  for (let at = 0; at < head; at += 1) change(step(), before[at], after[at])
  for (let at = head; at < before.length - tail; at += 1) step()?.remove()
  for (const element of after.slice(head, after.length - tail)) parent.insertBefore(made(element), node)
  for (let left = tail; left > 0; left -= 1) change(step(), before.at(-left), after.at(-left))
}

/** Makes an element on the page what it is to be, if it is not. */
function change(node: Element | null, before: SvgElement | undefined, after: SvgElement | undefined): void {
  if (node === null || before === undefined || after === undefined) return
  const [old, now] = [before.attributes, after.attributes]
  for (const name in now) {
    const value = now[name]
    if (value !== undefined && value !== old[name]) node.setAttribute(name, value)
  }
  for (const name in old) if (!(name in now)) node.removeAttribute(name)
  if (after.text !== undefined && after.text !== before.text) node.textContent = after.text
  if (after.inside !== undefined) changeInside(node, before.inside ?? [], after.inside)
}

function made({ tag, attributes, text, inside = [] }: SvgElement): Element {
  const node = document.createElementNS(namespace, tag)
  for (const [name, value] of Object.entries(attributes)) node.setAttribute(name, value)
  if (text !== undefined) node.textContent = text
  node.append(...inside.map(made))
  return node
}
