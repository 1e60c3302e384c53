import { balanceFigures } from '../figures/balance.ts'
import { burstFigures } from '../figures/bursts.ts'
import { cruiseFigures } from '../figures/cruise.ts'
import type { Figure } from '../figures/figure.ts'
import { forceFigures } from '../figures/force.ts'
import { heatFigures } from '../figures/heat.ts'
import { jamFigures } from '../figures/jam.ts'
import { motorFigures } from '../figures/motor.ts'
import { packFigures } from '../figures/pack.ts'
import { patternFigures } from '../figures/pattern.ts'
import { runFigures } from '../figures/run.ts'
import { speedFigures } from '../figures/speed.ts'
import { stopFigures } from '../figures/stop.ts'
import { trackFigures } from '../figures/track.ts'
import { wiringFigures } from '../figures/wiring.ts'

/** The figures in the order in which a builder reads them. */
export const figureSubjects: readonly (readonly [heading: string, figures: readonly Figure[]])[] = [
  ['Motor and ratio', motorFigures],
  ['Pack', packFigures],
  ['Speed and the run from rest', [...speedFigures, ...runFigures]],
  ['Forces', forceFigures],
  ['Balance', balanceFigures],
  ['A jam', jamFigures],
  ['Track', trackFigures],
  ['Through the drive pattern', patternFigures],
  ['Bursts and stops', [...burstFigures, ...stopFigures]],
  ['Heat of the drive pattern', heatFigures],
  ['Switching', wiringFigures],
  ['Level cruise', cruiseFigures],
]

/** Subjects that the ledger and the mishaps speak of already: left to the whole sheet. */
const toldElsewhere: ReadonlySet<string> = new Set(['Balance', 'A jam', 'Bursts and stops', 'Switching'])

/** Those that stand on the one page. */
export const pageSubjects = figureSubjects.filter(([heading]) => !toldElsewhere.has(heading))
