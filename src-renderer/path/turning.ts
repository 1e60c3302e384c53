import type { PowerPathScene, RunningLoop, TurningWheel } from '../../shared-engine/draw/power-path-scene.ts'

/** The quickest wheel turns at most this often per second: slow enough to count. */
const mostTurnsPerSecond = 0.4

interface Moved {
  readonly wheel: TurningWheel
  readonly element: Element
}

interface Run {
  readonly loop: RunningLoop
  readonly links: readonly Element[]
  /** Step last painted; links are moved only when it changes. */
  step: number
}

/** Everything that turns in a painted power path, found once; moving it sets `transform` attributes and nothing else. */
export class Turning {
  private readonly wheels: readonly Moved[]
  private readonly runs: readonly Run[]
  /** Motor turns per second at full speed. */
  readonly pace: number

  constructor(layer: Element, scene: PowerPathScene, prefix: string) {
    const byId = new Map([...layer.querySelectorAll('[id]')].map((element) => [element.id, element]))
    const find = (id: string): Element | null => byId.get(`${prefix}-${id}`) ?? null
    this.wheels = scene.wheels.flatMap((wheel) => {
      const element = find(wheel.id)
      return element === null ? [] : [{ wheel, element }]
    })
    this.runs = scene.loops.map((loop) => ({
      loop,
      links: Array.from({ length: loop.count }, (_, index) => find(`${loop.id}.${index}`)).filter(
        (link) => link !== null,
      ),
      step: 0,
    }))
    const quickest = Math.max(1e-9, ...scene.wheels.map((wheel) => Math.abs(wheel.turnsPerMotorTurn)))
    this.pace = mostTurnsPerSecond / quickest
  }

  /** Shows everything as it stands after so many turns of the motor. */
  show(motorTurns: number): void {
    for (const { wheel, element } of this.wheels) {
      const degrees = wheel.phase + 360 * ((motorTurns * wheel.turnsPerMotorTurn) % 1)
      element.setAttribute(
        'transform',
        `translate(${wheel.shift.x} ${wheel.shift.y}) rotate(${degrees.toFixed(2)})`,
      )
    }
    for (const run of this.runs) this.moveLinks(run, motorTurns)
  }

  private moveLinks(run: Run, motorTurns: number): void {
    const { loop, links } = run
    const all = loop.places.length
    const step = Math.round(motorTurns * loop.pitchesPerMotorTurn * loop.steps)
    if (step === run.step) return
    run.step = step
    links.forEach((link, index) => {
      const place = loop.places[(((index * loop.steps + step) % all) + all) % all]
      if (place === undefined) return
      link.setAttribute(
        'transform',
        `translate(${place.x.toFixed(2)} ${place.y.toFixed(2)}) rotate(${place.turn.toFixed(1)})`,
      )
    })
  }
}
