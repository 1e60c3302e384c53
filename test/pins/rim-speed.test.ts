import { expect, it } from 'vitest'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import { burstSpeedOf, centrifugalTension } from '../../shared-engine/track/tension.ts'
import { plainBuild } from '../fixtures/build/plain.ts'

const poundForce = 4.4482216152605
const foot = 0.3048

/** A loop that weighs and bears what one square inch of a cast-iron rim does: 0.26 lb/in³. */
const plain = plainBuild()
const rim = machineOf(
  completeBuild({
    ...plain,
    track: { ...plain.track, massGPerM: (0.26 * 453.59237) / 0.0254, breakingTensionN: 1000 * poundForce },
  }),
).track

// A pin, 4 % wide, because the only number remembered is itself rounded by as much: it would notice a factor, no digit.
// *Source:* *Machinery's Handbook*, flywheels: the hoop stress of a cast-iron rim is about V²/10 lbf/in², V in ft/s, so
// 1000 lbf/in² at 100 ft/s. From memory.

it('100 ft/s stress a cast-iron rim by 1000 lbf/in²', () => {
  // 4 %: the handbook rounds 0.097 to 0.1
  expect(Math.abs(centrifugalTension(rim, 100 * foot) / (1000 * poundForce) - 1)).toBeLessThan(0.04)
})

it('and 1000 lbf/in² are borne to 100 ft/s', () => {
  // 2 %: half of that, by the square root
  expect(Math.abs(burstSpeedOf(rim) / (100 * foot) - 1)).toBeLessThan(0.02)
})
