import { currentPowerEfficiency } from '../../shared-engine/draw/plots/current-power-efficiency.ts'
import { candidateMap } from '../../shared-engine/draw/plots/candidate-map.ts'
import { cruiseRange } from '../../shared-engine/draw/plots/cruise-range.ts'
import { limitBars } from '../../shared-engine/draw/plots/limit-bars.ts'
import { logOverTime } from '../../shared-engine/draw/plots/log-over-time.ts'
import { loopTension } from '../../shared-engine/draw/plots/loop-tension.ts'
import { marginBands } from '../../shared-engine/draw/plots/margin-band.ts'
import { overlay } from '../../shared-engine/draw/plots/overlay.ts'
import { patternOverTime } from '../../shared-engine/draw/plots/pattern-over-time.ts'
import { rpmToSpeed } from '../../shared-engine/draw/plots/rpm-to-speed.ts'
import { runFromRest } from '../../shared-engine/draw/plots/run-from-rest.ts'
import { smallMultiples } from '../../shared-engine/draw/plots/small-multiples.ts'
import { thrustAgainstSpeed } from '../../shared-engine/draw/plots/thrust-against-speed.ts'
import { toothLoadOverSpeed, toothLoadOverThrottle } from '../../shared-engine/draw/plots/tooth-load.ts'
import { warmUp } from '../../shared-engine/draw/plots/warm-up.ts'
import { powerPath } from '../../shared-engine/draw/power-path.ts'
import type { Scene } from '../../shared-engine/draw/scene.ts'
import * as demo from './demo-data.ts'
import { drawnMachines } from './machines.ts'

const metric = { system: 'metric', size: { width: 620, height: 300 } } as const
const imperial = { ...metric, system: 'imperial' } as const
const tall = { ...metric, size: { width: 620, height: 430 } }

const path =
  (name: keyof typeof drawnMachines, width = 1280) =>
  (): Scene => {
    const { machine, parallel } = drawnMachines[name]
    return powerPath(machine, { width, system: 'metric', cellsInParallel: parallel })
  }

const speedOfRpm = (rpm: number): number => rpm * 0.000385

/** Every drawing under test, by the name of its file. */
export const drawings: Readonly<Record<string, () => Scene>> = {
  'power-path-quick': path('quick'),
  'power-path-hauler': path('hauler'),
  'power-path-crawler': path('crawler'),
  'power-path-long-1024': path('long', 1024),
  'power-path-direct': path('direct'),
  'power-path-fitted': path('fitted'),
  'power-path-fitted-1024': path('fitted', 1024),
  'rpm-to-speed': () => rpmToSpeed({ speedOfRpm, ratedRpm: 31000, loadedRpm: 31400, freeRpm: 35600 }, metric),
  'thrust-against-speed': () => thrustAgainstSpeed({ states: demo.speedStates, top: demo.topState }, metric),
  'thrust-against-speed-imperial': () =>
    thrustAgainstSpeed({ states: demo.speedStates, top: demo.topState }, imperial),
  'thrust-does-not-move': () => thrustAgainstSpeed({ states: [], top: null }, metric),
  'current-power-efficiency': () =>
    currentPowerEfficiency({ states: demo.speedStates, topSpeed: 12.1 }, tall),
  'run-from-rest': () => runFromRest(demo.run, metric),
  'tooth-shear-over-throttle': () =>
    toothLoadOverThrottle({ subject: demo.shear, throttle: demo.throttle, cases: demo.toothCases }, metric),
  'tooth-shear-over-speed': () =>
    toothLoadOverSpeed(
      {
        subject: demo.shear,
        beltSpeed: demo.beltSpeed,
        groundSpeed: demo.groundSpeed,
        curves: demo.overSpeed,
      },
      metric,
    ),
  'loop-tension': () => loopTension(demo.tension, metric),
  'limit-bars': () => limitBars(demo.limitRows, metric),
  'warm-up': () => warmUp(demo.warmUpData, metric),
  'cruise-range': () => cruiseRange(demo.cruise, tall),
  'drive-pattern': () => patternOverTime(demo.pattern, tall),
  log: () => logOverTime(demo.log, tall),
  'candidate-map': () => candidateMap(demo.candidates, metric),
  'margin-bands': () => marginBands(demo.bands, metric),
  'sweep-top-speed': () =>
    first(smallMultiples(demo.sweep, { ...metric, size: { width: 300, height: 200 } })),
  'overlay-thrust': () => overlay(demo.compared, metric),
}

function first(scenes: readonly Scene[]): Scene {
  const [scene] = scenes
  if (scene === undefined) throw new Error('no scene')
  return scene
}
