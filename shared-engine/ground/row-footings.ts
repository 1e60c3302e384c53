import type { Machine, PatternRowPart } from '../machine/parts.ts'
import { copyFooting, Footing, setFooting } from './footing.ts'
import { StoodOn } from './stood-on.ts'

/**
 * What rounding leaves, as a share of the weight, of a slope that just balances the ground: whether the belt slips there
 * is not for the last digit to say.
 */
const balanced = 1e-14

/** A slope with a load and a tow, and the footing that the build's ground gives there. */
class KnownFooting {
  grade = NaN
  mass = NaN
  tow = NaN
  readonly footing = new Footing()
}

/**
 * The ground under the rows of a pattern. Most rows share their slope, load and tow, and all candidates of a search the
 * ground itself, so each footing is worked out once until one of them is another.
 */
export class RowFootings {
  readonly #stoodOn = new StoodOn()
  #count = 0
  readonly #known: KnownFooting[] = []

  /** Forgets what another ground gave. */
  standOn(machine: Machine): void {
    if (this.#stoodOn.isNew(machine)) this.#count = 0
  }

  /**
   * Fills the ground of one row: its slope, load and tow, and how much of resistance and grip there is.
   *
   * @param footing filled
   * @param machine that of {@link standOn}
   * @param grade rise over run, of the row or the build
   * *Source:* `docs/model.md` §5 with the row's entries; centre of mass as built.
   */
  set(footing: Footing, machine: Machine, row: PatternRowPart, grade: number): void {
    const { vehicle } = machine
    const mass = row.load === null ? vehicle.mass : vehicle.dryMass + row.load
    copyFooting(footing, this.#footingOf(machine, grade, mass, row.tow ?? vehicle.towForce))
    footing.standingResistance += (row.resistanceShare - 1) * footing.groundResistance
    if (Math.abs(footing.standingResistance) < balanced * footing.weight) footing.standingResistance = 0
    footing.groundResistance *= row.resistanceShare
    footing.gripThrust *= row.gripShare
    footing.shearStrength *= row.gripShare
  }

  #footingOf(machine: Machine, grade: number, mass: number, tow: number): Footing {
    for (let at = 0; at < this.#count; at += 1) {
      const known = this.#known[at]
      if (known?.grade === grade && known.mass === mass && known.tow === tow) return known.footing
    }
    const known = (this.#known[this.#count] ??= new KnownFooting())
    this.#count += 1
    const cosine = 1 / Math.sqrt(1 + grade * grade)
    known.grade = grade
    known.mass = mass
    known.tow = tow
    setFooting(known.footing, machine, grade * cosine, cosine, mass, tow)
    return known.footing
  }
}
