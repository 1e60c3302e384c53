import type { Scene } from '../../shared-engine/draw/scene.ts'
import { pictureSize, pictureSvg, type PictureWords } from '../../shared-engine/draw/picture.ts'
import { plotTable, tableCsv, tableTabs } from '../../shared-engine/draw/table.ts'

/** A drawing or its numbers on their way to a file. */
export interface PlotFile {
  readonly name: string
  readonly kind: 'svg' | 'png' | 'csv'
  readonly content: Blob
}

/** Dots of a PNG per px of the drawing. */
const sharpness = 3

/** The bundled face; it comes with the first picture. */
const face = () => import('./face.ts').then(({ faceAddress }) => faceAddress)

/** "Stoat, 28 November 2026. Computed by Pitchline: an estimate." */
export function wordsBelow(build: string, now: Date): string {
  const date = now.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })
  return `${build === '' ? '' : `${build}, `}${date}. Computed by Pitchline: an estimate.`
}

async function wordsOf(scene: Scene, build: string): Promise<PictureWords> {
  return { title: scene.title, below: wordsBelow(build, new Date()), face: await face() }
}

/** @param build name of the machine, for the line under the picture */
export async function svgFile(scene: Scene, build: string): Promise<PlotFile> {
  return {
    name: `${scene.name}.svg`,
    kind: 'svg',
    content: new Blob([pictureSvg(scene, await wordsOf(scene, build))], { type: 'image/svg+xml' }),
  }
}

function csvText(scene: Scene): string {
  return scene.plot === null ? '' : tableCsv(plotTable(scene.plot))
}

/** The numbers for the clipboard: cells between tabs, which a spreadsheet takes into columns. */
export function tabsText(scene: Scene): string {
  return scene.plot === null ? '' : tableTabs(plotTable(scene.plot))
}

export function csvFile(scene: Scene): PlotFile {
  return { name: `${scene.name}.csv`, kind: 'csv', content: new Blob([csvText(scene)], { type: 'text/csv' }) }
}

/** The drawing as dots, on white paper. Rejects where the browser cannot draw it. */
export async function pngFile(scene: Scene, build: string): Promise<PlotFile> {
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(pictureSvg(scene, await wordsOf(scene, build)))}`
  await image.decode()
  const canvas = document.createElement('canvas')
  const { width, height } = pictureSize(scene)
  canvas.width = Math.round(width * sharpness)
  canvas.height = Math.round(height * sharpness)
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
  const content = await new Promise<Blob>((resolve, reject) => {
    canvas.toBlob((blob) =>
      blob === null ? reject(new Error('the drawing could not be made into dots')) : resolve(blob),
    )
  })
  return { name: `${scene.name}.png`, kind: 'png', content }
}

/** Offers a file as a download: what a browser can always do. */
export function downloadFile({ name, content }: PlotFile): void {
  const url = URL.createObjectURL(content)
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}
