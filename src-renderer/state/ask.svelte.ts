/** A question that has to be answered before going on. */
interface Asked<Answer extends string = string> {
  readonly title: string
  readonly lines: readonly string[]
  /** Verbs, the usual one first; `null` (Escape, Cancel) is always an answer. */
  readonly choices: readonly { readonly answer: Answer; readonly label: string }[]
}

/** Asks one question at a time; the answer is a promise, so that a command reads from top to bottom. */
export class Ask {
  open = $state.raw<Asked | null>(null)
  #answer: ((answer: string | null) => void) | null = null

  choose<Answer extends string>(asked: Asked<Answer>): Promise<Answer | null> {
    this.answer(null) // an older question is overtaken
    this.open = asked
    return new Promise((resolve) => {
      this.#answer = (answer) =>
        resolve(asked.choices.find((choice) => choice.answer === answer)?.answer ?? null)
    })
  }

  answer(answer: string | null): void {
    const tell = this.#answer
    this.#answer = null
    this.open = null
    tell?.(answer)
  }
}
