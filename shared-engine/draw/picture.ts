import type { Scene } from './scene.ts'
import { number, printPalette, sceneElements, svgFont } from './svg.ts'
import { escaped, svgMarkup } from './svg-element.ts'

/** What a picture that leaves the program says about itself. */
export interface PictureWords {
  /** What it shows. */
  readonly title: string
  /** Of which machine, when, by what: one line under it. */
  readonly below: string
  /** The bundled face as a `data:` address, so that the picture looks alike where it is not installed; null: by name only. */
  readonly face: string | null
}

/** px. */
const edge = 14
const head = 30
const foot = 26

/** Size of the picture of a scene, px. */
export function pictureSize({ width, height }: Scene): { readonly width: number; readonly height: number } {
  return { width: width + 2 * edge, height: height + head + foot }
}

/**
 * A scene as a picture that stands by itself, as a complete SVG file on white: its title above, machine and date below, room
 * at all edges. The face is in it; nothing is fetched.
 */
export function pictureSvg(scene: Scene, { title, below, face }: PictureWords): string {
  const { width, height } = pictureSize(scene)
  const [w, h] = [number(width), number(height)]
  const family = face === null ? svgFont : `'Pitchline face', ${svgFont}`
  const style =
    face === null
      ? ''
      : `<style>@font-face{font-family:'Pitchline face';font-weight:200 900;src:url(${face}) format('woff2')}</style>\n`
  const text = (y: number, words: string, size: number, fill: string, weight: number) =>
    `<text x="${edge}" y="${number(y)}" font-size="${size}" font-weight="${weight}" fill="${fill}">${escaped(words)}</text>`
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}" font-family="${escaped(family)}" fill="none">`,
    `<title>${escaped(`${title}. ${below}`)}</title>`,
    `<desc>${escaped(scene.summary)}</desc>`,
    `${style}<rect width="${w}" height="${h}" fill="${printPalette.paper}"/>`,
    text(20, title, 15, printPalette.ink, 600),
    `<g transform="translate(${edge} ${head})">`,
    svgMarkup(sceneElements(scene, printPalette, scene.name), '\n'),
    '</g>',
    text(height - 9, below, 11, printPalette.quiet, 400),
    '</svg>',
    '',
  ].join('\n')
}
