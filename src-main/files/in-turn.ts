/** Carries out orders one after the other, in the order in which they were given, whatever becomes of each. */
export class InTurn {
  #last: Promise<unknown> = Promise.resolve()

  run<T>(order: () => Promise<T>): Promise<T> {
    const answer = this.#last.then(order)
    this.#last = answer.catch(() => undefined)
    return answer
  }
}
