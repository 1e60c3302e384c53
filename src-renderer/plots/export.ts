import type { Scene } from '../../shared-engine/draw/scene.ts'
import { sceneSvg } from '../../shared-engine/draw/svg.ts'
import { plotTable, tableCsv, tableTabs } from '../../shared-engine/draw/table.ts'

/** A drawing or its numbers on their way to a file. */
export interface PlotFile {
  readonly name: string
  readonly kind: 'svg' | 'png' | 'csv'
  readonly content: Blob
}

/** Dots of a PNG per px of the drawing. */
const sharpness = 3

export function svgFile(scene: Scene): PlotFile {
  return {
    name: `${scene.name}.svg`,
    kind: 'svg',
    content: new Blob([sceneSvg(scene)], { type: 'image/svg+xml' }),
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
export async function pngFile(scene: Scene): Promise<PlotFile> {
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(sceneSvg(scene))}`
  await image.decode()
  const canvas = document.createElement('canvas')
  canvas.width = Math.round(scene.width * sharpness)
  canvas.height = Math.round(scene.height * sharpness)
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
  const content = await new Promise<Blob>((resolve, reject) => {
    canvas.toBlob((blob) =>
      blob === null ? reject(new Error('the drawing could not be made into dots')) : resolve(blob),
    )
  })
  return { name: `${scene.name}.png`, kind: 'png', content }
}

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

/** Offers a file as a download: what a browser can always do. */
export function downloadFile({ name, content }: PlotFile): void {
  const url = URL.createObjectURL(content)
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}
