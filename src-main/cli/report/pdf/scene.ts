import { hatchPath, printPalette as palette } from '../../../../shared-engine/draw/svg.ts'
import type { GroupShape, Scene, Shape, Stroke, TextShape } from '../../../../shared-engine/draw/scene.ts'
import type { Role } from '../../../../shared-engine/draw/role.ts'

type Doc = PDFKit.PDFDocument

/** Fills and strokes the path that was just laid. */
function paint(
  doc: Doc,
  fill: Role | undefined,
  opacity: number | undefined,
  stroke: Stroke | undefined,
): void {
  if (fill !== undefined) doc.fillColor(palette[fill], opacity ?? 1)
  if (stroke !== undefined) {
    doc.lineWidth(stroke.width ?? 1).strokeColor(palette[stroke.role])
    const dash = stroke.dash ?? []
    // The types know one length only; the library takes a list.
    if (dash.length > 0) doc.dash([...dash] as unknown as number, {})
    else doc.undash()
  }
  if (fill !== undefined && stroke !== undefined) doc.fillAndStroke(palette[fill], palette[stroke.role])
  else if (fill !== undefined) doc.fill()
  else if (stroke !== undefined) doc.stroke()
  // A path that nothing paints would be painted with the next one.
  else (doc as unknown as { addContent: (operator: string) => void }).addContent('n')
}

function putText(doc: Doc, shape: TextShape): void {
  const { at, text, size, role, anchor = 'start', weight = 'regular', turn, rim = false } = shape
  doc.font(weight).fontSize(size)
  const width = doc.widthOfString(text)
  const x = at.x - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0)
  doc.save()
  if (turn !== undefined && turn !== 0) doc.rotate(turn, { origin: [at.x, at.y] })
  const line = { lineBreak: false, baseline: 'alphabetic' } as const
  if (rim) {
    doc.undash().lineWidth(3).lineJoin('round').strokeColor(palette.paper)
    doc.text(text, x, at.y, { ...line, stroke: true, fill: false })
  }
  doc.fillColor(palette[role], 1).text(text, x, at.y, line)
  doc.restore()
}

function putGroup(doc: Doc, { shift, turn, clip, shapes }: GroupShape): void {
  doc.save()
  if (shift !== undefined) doc.translate(shift.x, shift.y)
  if (turn !== undefined && turn !== 0) doc.rotate(turn)
  if (clip !== undefined) doc.rect(clip.x, clip.y, clip.width, clip.height).clip()
  for (const shape of shapes) putShape(doc, shape)
  doc.restore()
}

function putShape(doc: Doc, shape: Shape): void {
  switch (shape.shape) {
    case 'path':
      if (shape.d === '') return
      doc.path(shape.d)
      return paint(doc, shape.fill, shape.fillOpacity, shape.stroke)
    case 'polygon':
      doc.polygon(...shape.points.map(({ x, y }) => [x, y]))
      return paint(doc, shape.fill, shape.fillOpacity, shape.stroke)
    case 'line':
      doc.moveTo(shape.from.x, shape.from.y).lineTo(shape.to.x, shape.to.y)
      return paint(doc, undefined, undefined, shape.stroke)
    case 'circle':
      doc.circle(shape.centre.x, shape.centre.y, shape.radius)
      return paint(doc, shape.fill, undefined, shape.stroke)
    case 'text':
      return putText(doc, shape)
    case 'hatch': {
      const d = hatchPath(shape.box, shape.spacing)
      if (d === '') return
      doc.path(d)
      return paint(doc, undefined, undefined, { role: shape.role, width: 0.8 })
    }
    case 'group':
      return putGroup(doc, shape)
  }
}

/** A drawing as vectors, its left upper corner at a place, so many points a px. */
export function putScene(doc: Doc, scene: Scene, x: number, y: number, scale: number): void {
  doc.save()
  doc.translate(x, y).scale(scale)
  doc.rect(0, 0, scene.width, scene.height).clip()
  for (const shape of scene.shapes) putShape(doc, shape)
  doc.restore()
}
