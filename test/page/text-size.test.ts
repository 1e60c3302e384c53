import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { filesBelow } from '../house/sources-of.ts'

/** Sizes of letters that stay as they are whatever a person asks for; not those of a drawing, which is made for its letters. */
const fixedIn = (css: string): string[] =>
  [...css.matchAll(/([^{}]*)\{([^{}]*)\}/g)].flatMap(([, selector = '', body = '']) =>
    /\btext\b|\.scene|svg/.test(selector.replaceAll(/\/\*[\s\S]*?\*\//g, ''))
      ? []
      : [...body.matchAll(/font(?:-size)?:[^;]*?\d(?:px|pt)\b[^;]*/g)].map(([rule]) => rule),
  )

it('letters of the page are sized by what the person asks for: none has its own px', () => {
  const files = filesBelow('src-renderer', ['.svelte', '.css']).filter(
    (file) => !/print\.css$|[\\/]sheet[\\/]/.test(file),
  )
  expect(files.length).toBeGreaterThan(100)
  const fixed = files.flatMap((file) => {
    const text = readFileSync(file, 'utf8')
    const css = file.endsWith('.css') ? text : (/<style>([\s\S]*)<\/style>/.exec(text)?.[1] ?? '')
    return fixedIn(css).map((rule) => `${file}: ${rule}`)
  })
  expect(fixed).toEqual([])
})

it('and one that had would be found', () => {
  expect(
    fixedIn('p { font-size: 13px; } .flag text { font-size: 13px; } b { font: 600 12pt serif }'),
  ).toHaveLength(2)
  expect(fixedIn('p { font-size: 0.8125rem; padding: 2px }')).toEqual([])
})
