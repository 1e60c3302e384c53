import { pagePalette, sceneMarkup } from '../../shared-engine/draw/svg.ts'
import type { Scene } from '../../shared-engine/draw/scene.ts'

/** What each group shows now: most edits leave most drawings as they are. */
const painted = new WeakMap<SVGGElement, string>()

/**
 * Puts a scene's shapes into an SVG group. Markup is parsed by the browser in one go: a plot is painted several times
 * faster than element by element. Texts are escaped where the markup is written.
 */
export function paintScene(layer: SVGGElement, scene: Scene, prefix: string): void {
  const markup = sceneMarkup(scene, pagePalette, prefix)
  if (painted.get(layer) === markup) return
  painted.set(layer, markup)
  layer.innerHTML = markup
}

/** Marks the shapes of one limit, and no others. */
export function markLimit(layer: SVGGElement, limit: string | null): void {
  for (const shape of layer.querySelectorAll('[data-limit]')) {
    shape.classList.toggle('chosen', limit !== null && shape.getAttribute('data-limit') === limit)
  }
}
