import type { JamCurve, JamOverSpan } from '../../explain/jam-curve.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { absentPlot, said, seriesCurve, type PlotLook } from './plot-look.ts'

const name = 'jam-force'
const title = 'Force of a jam over belt speed'

/** What the first letter of a label begins: "breaks the loop" to "Breaks the loop". */
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** The axis ends there; parts that go beyond are not marked. */
function rulesOf({ breaks, top, free }: JamCurve, look: PlotLook): Mark[] {
  const goes = breaks.map(({ limit, breaks: what, speed }): Mark => ({
    mark: 'rule',
    axis: 'x',
    value: speed,
    label: `${capital(what)}, ${speed === 0 ? 'at any speed' : said(speed, 'speed', look)}`,
    role: 'over',
    dash: [2, 3],
    limit,
  }))
  const states: readonly (readonly [number | null, string])[] = [
    [top, 'Top speed'],
    [free, 'Running free'],
  ]
  return [
    ...goes,
    ...states.flatMap(([speed, label]): Mark[] =>
      speed === null
        ? []
        : [
            {
              mark: 'rule',
              axis: 'x',
              value: speed,
              label: `${label} ${said(speed, 'speed', look)}`,
              role: 'quiet',
            },
          ],
    ),
  ]
}

/** Pull of one loop at the peak of a stop over the speed it is stopped from, and the speed at which each part goes. */
export function jamForce(curve: JamCurve | null, look: PlotLook): Scene {
  if (curve === null)
    return absentPlot(name, title, 'Rotor inertia, the tooth and the loop’s stiffness would bring it.', look)
  const { speeds, pulls, breaks } = curve
  const first = breaks[0]
  const weakest =
    first === undefined
      ? 'No jam up to the fastest that the belt can run breaks anything that is known.'
      : `First, ${first.speed === 0 ? 'at any speed' : `above ${said(first.speed, 'speed', look)}`}, a jam ${first.breaks}.`
  return plot({
    name,
    title,
    summary: `${weakest} At the fastest, one loop is pulled with ${said(pulls.at(-1) ?? null, 'force', look)}.`,
    ...look,
    sureTo: look.figures,
    x: { label: 'Belt speed', kind: 'speed' },
    panels: [
      {
        y: { label: 'Pull of one loop', kind: 'force' },
        marks: [
          ...rulesOf(curve, look),
          { ...seriesCurve(0, 'Held at once', speeds, pulls), marker: undefined },
        ],
      },
    ],
  })
}

/** The same from top speed, over how far from the sprocket the loop is held. */
export function jamSpan({ spans, pulls, today }: JamOverSpan, look: PlotLook): Scene {
  const known = pulls.filter((pull) => pull !== null)
  const [most, least] = [Math.max(...known), Math.min(...known)]
  const here: Mark = {
    mark: 'rule',
    axis: 'x',
    value: today,
    label: `Counted with ${said(today, 'length', look)}`,
    role: 'quiet',
  }
  return plot({
    name: 'jam-span',
    title: 'Force of that jam over where the loop is held',
    summary: `Held right at the sprocket ${said(most, 'force', look)}, at the far end ${said(least, 'force', look)}: a near obstacle stops it harder.`,
    ...look,
    sureTo: look.figures,
    x: { label: 'From the sprocket to the obstacle', kind: 'length' },
    panels: [
      {
        y: { label: 'Pull of one loop', kind: 'force' },
        marks: [here, { ...seriesCurve(0, 'Held at once', spans, pulls), marker: undefined, unnamed: true }],
      },
    ],
  })
}
