import katex from 'katex'
import 'katex/dist/katex.min.css'

/** Puts typeset mathematics into an element; where TeX is not understood, the plain text stays readable. */
export function render(tex: string, element: HTMLElement, display: boolean): void {
  try {
    katex.render(tex, element, {
      displayMode: display,
      fleqn: true,
      output: 'htmlAndMathml',
      strict: 'ignore',
      trust: false,
    })
  } catch {
    element.textContent = tex
  }
}
