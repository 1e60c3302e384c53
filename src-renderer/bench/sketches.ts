import type { TestId } from '../../shared-engine/reference/measurements.ts'

/** A small drawing of how a test is set up, in a box of 200 × 110. */
interface Sketch {
  /** Path data: `line` is what is there, `heavy` what is measured with, `arrow` what moves. */
  readonly line: string
  readonly heavy?: string
  readonly arrow?: string
  readonly labels: readonly (readonly [x: number, y: number, text: string])[]
}

const circle = (x: number, y: number, r: number) =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`
const box = (x: number, y: number, width: number, height: number) =>
  `M${x} ${y}h${width}v${height}h${-width}z`
/** An arrow of a length to the right (or left, where it is negative). */
const arrow = (x: number, y: number, length: number) => {
  const back = length > 0 ? -6 : 6
  return `M${x} ${y}h${length}m${back} -4l${-back} 4l${back} 4`
}
/** An arrow up or down (negative: up). */
const arrowDown = (x: number, y: number, length: number) => {
  const back = length > 0 ? -6 : 6
  return `M${x} ${y}v${length}m-4 ${back}l4 ${-back}l4 ${back}`
}

const motor = (x: number, y: number) => `${circle(x, y, 20)}${circle(x, y, 4)}${box(x - 24, y + 20, 48, 6)}`
const ground = (y: number) => `M8 ${y}h184`
/** The machine from the side: a loop with its wheels and a body, its rear bottom corner at the place. */
const machine = (x: number, y: number) =>
  `M${x + 14} ${y}h52l14 -22a8 8 0 0 0 -8 -10h-62a8 8 0 0 0 -8 10z${circle(x + 10, y - 20, 7)}${circle(x + 70, y - 20, 7)}${box(x + 16, y - 52, 48, 18)}`
const scale = (x: number, y: number) => `${box(x - 16, y - 8, 32, 8)}${circle(x, y - 4, 2)}`
const springScale = (x: number, y: number) =>
  `${box(x, y - 6, 26, 12)}M${x + 8} ${y - 6}v5M${x + 14} ${y - 6}v5M${x + 20} ${y - 6}v5`
const meter = (x: number, y: number) => `${box(x, y, 32, 22)}M${x + 8} ${y + 16}l10 -10`
const hand = (x: number, y: number) => circle(x, y, 4)

const onTheBench: Sketch = {
  line: `${motor(130, 50)}${box(12, 40, 34, 26)}M46 46h62M46 58h62`,
  heavy: `${meter(62, 12)}M70 34v12M86 34v24`,
  arrow: 'M104 26a34 34 0 0 1 44 -4m-8 -2l8 2l-2 8',
  labels: [
    [29, 80, 'supply'],
    [78, 8, 'meter'],
    [130, 92, 'clamped'],
  ],
}

const underLoad: Sketch = {
  line: `${box(12, 30, 50, 44)}M62 40h70v6M62 64h70v-6${box(122, 46, 20, 12)}`,
  heavy: `${meter(82, 78)}M86 78v-14M110 78v-38`,
  labels: [
    [37, 56, 'pack'],
    [160, 56, 'load'],
    [136, 96, 'meter'],
  ],
}

const onScales: Sketch = {
  line: `${machine(58, 78)}M56 82h16M128 82h16${ground(98)}`,
  heavy: `${scale(64, 94)}${scale(136, 94)}`,
  arrow: `M64 106h72m-72 -3v6m72 -6v6`,
  labels: [
    [30, 92, 'rear'],
    [168, 92, 'front'],
  ],
}

const pulled: Sketch = {
  line: `${machine(20, 86)}M100 66h26${ground(88)}`,
  heavy: springScale(126, 66),
  arrow: `M152 66h6${arrow(158, 66, 30)}`,
  labels: [[139, 54, 'scale']],
}

const tilted: Sketch = {
  line: 'M12 96h176M12 96l170 -44M182 52v44M40 87l52 -13.5l-5 -18l-52 13.5zM48 65l34 -9l-4 -13l-34 9z',
  heavy: `M188 52h8M188 96h8M192 52v44`,
  labels: [
    [176, 82, 'rise'],
    [96, 106, 'along the board'],
  ],
}

const hung: Sketch = {
  line: `M60 10h80M100 10v8M84 30a16 12 0 0 1 32 0v36a16 12 0 0 1 -32 0z`,
  heavy: `M100 78v8${box(84, 86, 32, 18)}`,
  arrow: `M130 24v48m-4 -48h8m-8 48h8`,
  labels: [
    [100, 99, 'kg'],
    [152, 52, 'length'],
  ],
}

const warming: Sketch = {
  line: `${motor(84, 50)}M12 42h52M12 56h52`,
  heavy: `M104 50h22${meter(126, 40)}`,
  arrow: `${arrowDown(84, 24, -14)}`,
  labels: [
    [142, 76, 'thermometer'],
    [30, 34, 'amps'],
  ],
}

const sketches: Readonly<Record<TestId, Sketch>> = {
  kv: onTheBench,
  'free-run': onTheBench,
  'pole-count': onTheBench,
  'rated-rpm': onTheBench,
  'kv-spin': {
    line: `${motor(140, 50)}M40 50h80${box(12, 36, 36, 26)}M22 62l-4 24h16l4 -24`,
    heavy: `${meter(124, 84)}M130 84v-14M150 84v-14`,
    arrow: 'M84 40a14 14 0 0 1 0 20m-5 -3l5 3l3 -6',
    labels: [
      [30, 30, 'drill'],
      [180, 98, 'AC volts'],
    ],
  },
  'winding-resistance': {
    line: `${motor(140, 50)}M120 44h-70M120 58h-70${box(16, 38, 34, 26)}`,
    heavy: `${meter(150, 82)}M156 82l-20 -18M174 82l-20 -18`,
    labels: [
      [33, 80, 'amps'],
      [92, 100, 'volts at the leads'],
    ],
  },
  'pack-resistance': underLoad,
  'wiring-drop': {
    ...underLoad,
    heavy: `${meter(82, 78)}M86 78v-14M62 64l24 14M110 78l18 -14`,
    labels: [...underLoad.labels.slice(0, 2), [160, 96, 'along one lead']],
  },
  'pack-capacity': { ...underLoad, labels: [...underLoad.labels.slice(0, 2), [136, 96, 'counter']] },
  weigh: onScales,
  'weight-share': onScales,
  load: onScales,
  'cg-lift': {
    line: `M40 92l64 -30M46 86l58 -28l2 -24l-66 30z${box(56, 26, 36, 14)}${ground(98)}M104 62v20`,
    heavy: `${scale(104, 92)}${scale(42, 98)}`,
    arrow: 'M128 62v36m-4 -36h8m-8 36h8',
    labels: [
      [146, 84, 'lift'],
      [104, 108, 'front scale'],
    ],
  },
  'cg-tip': tilted,
  'rolling-board': tilted,
  'rolling-pull': {
    ...pulled,
    arrow: `${pulled.arrow ?? ''}${arrow(40, 100, -24)}${arrow(60, 100, 24)}`,
    labels: [...pulled.labels, [124, 104, 'out and back']],
  },
  grip: { ...pulled, labels: [...pulled.labels, [64, 104, 'tracks braked']] },
  'ski-friction': {
    line: `M20 84h70q10 0 16 -12M40 84v-14h40v14${box(44, 50, 32, 20)}M106 74h20${ground(88)}`,
    heavy: springScale(126, 74),
    arrow: `M152 74h6${arrow(158, 74, 30)}`,
    labels: [
      [60, 64, 'load'],
      [139, 62, 'scale'],
    ],
  },
  'turn-friction': {
    line: `${box(40, 30, 80, 14)}${box(40, 70, 80, 14)}${box(54, 44, 52, 26)}M118 57h6v-2`,
    heavy: `M122 57v20${box(116, 77, 12, 22)}`,
    arrow: `M80 104h42m-42 -3v6m42 -6v6${arrowDown(122, 99, 10)}`,
    labels: [
      [100, 22, 'from above'],
      [146, 92, 'scale'],
      [98, 98, 'arm'],
    ],
  },
  'coast-down': {
    line: `${machine(50, 86)}${ground(88)}`,
    arrow: `${arrow(140, 66, 40)}${arrow(60, 100, -30)}${arrow(100, 100, 30)}`,
    labels: [
      [160, 58, 'rolls out'],
      [166, 104, 'both ways'],
    ],
  },
  'track-drag': {
    line: `${machine(56, 72)}${box(76, 72, 40, 18)}${ground(90)}`,
    arrow: 'M60 32a40 20 0 0 1 50 -6m-8 -2l8 2l-3 7',
    labels: [[96, 104, 'loops in the air']],
  },
  'span-frequency': {
    line: `${circle(30, 60, 14)}${circle(170, 60, 14)}M30 46h140M30 74h140`,
    heavy: `${hand(100, 34)}M100 38v8`,
    arrow: 'M60 46q40 -12 80 0',
    labels: [
      [100, 24, 'pluck the span'],
      [100, 98, 'note, Hz'],
    ],
  },
  'loop-stiffness': hung,
  'loop-break': { ...hung, labels: [[100, 99, 'kg']] },
  'tooth-shear': {
    line: `M20 40h160v14h-160z M60 54v14h10v-14M94 54v14h12v-14M130 54v14h10v-14`,
    heavy: `M106 62h22M128 54v30${box(116, 84, 24, 18)}`,
    arrow: arrow(108, 62, 26),
    labels: [
      [128, 97, 'kg'],
      [60, 32, 'loop, clamped'],
      [74, 84, 'one tooth'],
    ],
  },
  'rotor-bifilar': {
    line: `M50 12h100M76 12v50M124 12v50${box(66, 62, 68, 14)}M100 62v-6`,
    heavy: circle(170, 84, 12),
    arrow: 'M60 88q40 14 80 0m-8 -3l8 3l-4 7M76 20h48m-48 -3v6m48 -6v6',
    labels: [
      [100, 34, 'apart'],
      [170, 106, 's'],
    ],
  },
  'rotor-run-down': {
    ...onTheBench,
    line: motor(100, 50),
    heavy: circle(166, 50, 14),
    arrow: 'M74 26a34 34 0 0 1 44 -4m-8 -2l8 2l-2 8',
    labels: [
      [166, 78, 'rpm over time'],
      [100, 92, 'power off'],
    ],
  },
  'warm-up': warming,
  'cool-down': { ...warming, labels: [warming.labels[0] ?? [0, 0, ''], [30, 34, 'no current']] },
  flow: {
    line: `${box(20, 20, 40, 30)}M60 40h50q10 0 10 10v8${'M100 62l6 34h40l6 -34z'}`,
    heavy: `${scale(126, 104)}${circle(176, 40, 12)}`,
    arrow: arrowDown(120, 50, 22),
    labels: [
      [40, 38, 'pump'],
      [176, 64, 's'],
      [166, 102, 'kg'],
    ],
  },
  radiator: {
    line: `${box(64, 26, 72, 50)}M76 26v50M88 26v50M100 26v50M112 26v50M124 26v50M20 40h44M136 62h44`,
    heavy: `${circle(40, 32, 4)}${circle(160, 54, 4)}${circle(100, 92, 4)}`,
    arrow: `${arrow(22, 40, 22)}${arrow(146, 62, 24)}`,
    labels: [
      [40, 24, 'in'],
      [160, 46, 'out'],
      [120, 96, 'air'],
    ],
  },
  'track-pitch': {
    line: `M16 40h168v12h-168zM30 52v12h8v-12M58 52v12h8v-12M86 52v12h8v-12M114 52v12h8v-12M142 52v12h8v-12`,
    heavy: 'M34 84h112M34 78v12M146 78v12M62 84v-4M90 84v-4M118 84v-4',
    labels: [[90, 102, 'over many pitches']],
  },
  slip: {
    line: `${machine(20, 70)}${ground(72)}`,
    heavy: 'M30 88h150M30 82v12M180 82v12',
    arrow: arrow(116, 52, 44),
    labels: [
      [105, 104, 'metres on the tape'],
      [34, 12, 'count turns'],
    ],
  },
}

/** How a guided test is set up. */
export function sketchOf(test: TestId): Sketch {
  return sketches[test]
}
