import type { Scene } from '../../../../shared-engine/draw/scene.ts'
import { putScene } from './scene.ts'
import { colours, type Face, type Writer } from './writer.ts'

const gap = 16
const title: Face = { size: 8.5, weight: 'strong' }
const summary: Face = { size: 7.5, colour: colours.quiet }

/** Drawings side by side: those of one line are as wide as each other. */
function linesOf(scenes: readonly Scene[], wide: boolean): readonly (readonly Scene[])[] {
  const each = wide ? 1 : 2
  return Array.from({ length: Math.ceil(scenes.length / each) }, (_, at) =>
    scenes.slice(at * each, (at + 1) * each),
  )
}

interface Figure {
  readonly scene: Scene
  readonly title: readonly string[]
  readonly summary: readonly string[]
  readonly scale: number
  readonly height: number
}

function figureOf(writer: Writer, scene: Scene, width: number): Figure {
  const [heading, told] = [
    writer.lines(scene.title, width, title),
    writer.lines(scene.summary, width, summary),
  ]
  const scale = width / scene.width
  const words = heading.length * writer.lineHeight(title) + told.length * writer.lineHeight(summary)
  return { scene, title: heading, summary: told, scale, height: words + scene.height * scale + 8 }
}

function putFigure(writer: Writer, figure: Figure, x: number): void {
  let { y } = writer
  for (const [lines, face] of [
    [figure.title, title],
    [figure.summary, summary],
  ] as const)
    for (const line of lines) {
      writer.put(line, x, y, face)
      y += writer.lineHeight(face)
    }
  if (!writer.trial) putScene(writer.doc, figure.scene, x, y + 2, figure.scale)
}

const widthOf = (writer: Writer, wide: boolean) => (wide ? writer.width : (writer.width - gap) / 2)

/** Height of the first line of drawings. */
export function scenesStart(writer: Writer, scenes: readonly Scene[], wide: boolean): number {
  const width = widthOf(writer, wide)
  const [first = []] = linesOf(scenes, wide)
  return Math.max(0, ...first.map((scene) => figureOf(writer, scene, width).height))
}

/** Drawings with their titles and what they show; none is cut by the end of a page. */
export function putScenes(writer: Writer, scenes: readonly Scene[], wide: boolean): void {
  const width = widthOf(writer, wide)
  for (const line of linesOf(scenes, wide)) {
    const figures = line.map((scene) => figureOf(writer, scene, width))
    const height = Math.max(...figures.map((figure) => figure.height))
    writer.room(height)
    figures.forEach((figure, at) => putFigure(writer, figure, writer.left + at * (width + gap)))
    writer.y += height
  }
}
