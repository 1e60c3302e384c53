import type { QuantityKind } from '../units/kinds.ts'

/** One letter of a formula: what it stands for and the number put in. */
export interface WorkingSymbol {
  /** As it stands in the expression: `K_t`, `omega_ref`. */
  readonly symbol: string
  /** The quantity in words. */
  readonly name: string
  /** Its value in SI (°C for temperatures); null where it does not exist. */
  readonly value: number | null
  readonly kind: QuantityKind
  /** The build's entry it comes from (`motor.kvRpmPerVolt`), or the figure that explains it (`figure:freeRpm`). */
  readonly from?: string
}

/** One line of a working: an expression that, with the symbols put in, gives the value. */
export interface WorkingStep {
  /** The symbol on the left of the equals sign. */
  readonly symbol: string
  readonly name: string
  /**
   * Right-hand side in plain algebra (`delta * V_0 / (R_s + M * delta^2 * R_b)`), read by the typesetter, by the
   * plain-text printer and by the test that replays it. Null where a root or an integral is meant: `words` says which.
   */
  readonly expression: string | null
  /** In words, where algebra does not say it: "the ground speed at which thrust equals resistance". */
  readonly words?: string
  /** What the expression gives, or what was found; of the last step the figure or the margin itself. */
  readonly value: number | null
  readonly kind: QuantityKind
}

/** How a number came about: everything needed to redo it by hand. */
export interface Working {
  /** Figure name or limit id. */
  readonly subject: string
  /** One sentence: what the number is. */
  readonly title: string
  /** Symbols that the steps use and that no earlier step defines. */
  readonly symbols: readonly WorkingSymbol[]
  /** In order; the last one gives the result. */
  readonly steps: readonly WorkingStep[]
  /** Load case or state in words: "launch: a jam at full throttle, pack full and rested, motor at 20 °C". */
  readonly state: string
  /** Standard or book with equation; `assumption`; `common practice, no source`. */
  readonly source: string
  readonly assumptions: readonly string[]
  /** Why the result does not exist, where its value is null. */
  readonly missing?: string
}
