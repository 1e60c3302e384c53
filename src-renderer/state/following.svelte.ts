/** What long work tells while it runs and once it ended. */
export interface Watching<Outcome> {
  readonly progress: (done: number, total: number, secondsLeft: number | null) => void
  /** Something to look at before the end, for as long as the work runs; what was found before comes back if it is stopped. */
  readonly told: (outcome: Outcome) => void
  /** Null where nothing had been found yet. */
  readonly ended: (how: 'finished' | 'stopped' | 'failed', outcome: Outcome | null) => void
}

/** What is held of work that runs. */
export interface Held {
  readonly stop: () => void
  readonly drop: () => void
}

/** ms after the last change until work begins by itself: typing goes on undisturbed. */
const usualPause = 500

/**
 * Long work that follows what it depends on: begun anew a pause after each change for as long as somebody looks, dropped
 * with the change, and what it found is told apart from what would be found now.
 */
export class Following<Outcome> {
  readonly #key: () => readonly unknown[]
  readonly #begin: (watching: Watching<Outcome>) => Held
  readonly #pause: number
  #held: Held | null = null
  /** Number of the run that is listened to. */
  #turn = 0
  /** Whether somebody looks. */
  #looked = $state.raw(false)
  /** What was last followed. */
  #followed: readonly unknown[] | null = null
  #found = $state.raw<{ readonly key: readonly unknown[]; readonly outcome: Outcome } | null>(null)
  /** What is looked at before the end of the work. */
  #early = $state.raw<{ readonly key: readonly unknown[]; readonly outcome: Outcome } | null>(null)
  running = $state.raw<{
    readonly done: number
    readonly total: number
    /** From the pace so far; null while that is a guess. */
    readonly secondsLeft: number | null
  } | null>(null)
  /** Stopped, or broken off, and for what; it does not begin by itself again for the same. */
  #brokenOff = $state.raw<{
    readonly key: readonly unknown[]
    readonly how: 'stopped' | 'failed'
  } | null>(null)

  /**
   * @param key everything that the outcome depends on, compared by identity
   * @param begin starts the work for the key in force
   * @param pause ms between a change and the beginning
   */
  constructor(
    key: () => readonly unknown[],
    begin: (watching: Watching<Outcome>) => Held,
    pause = usualPause,
  ) {
    this.#pause = pause
    this.#key = key
    this.#begin = begin
  }

  get found(): Outcome | null {
    return (this.#early ?? this.#found)?.outcome ?? null
  }

  /** Whether what was found is what would be found now. */
  readonly isCurrent: boolean = $derived.by(
    () => this.#early === null && this.#found !== null && same(this.#found.key, this.#key()),
  )

  /** Whether what is there is what is being found now, as far as it is known. */
  readonly isEarly: boolean = $derived.by(() => this.#early !== null && same(this.#early.key, this.#key()))

  readonly brokenOff: 'stopped' | 'failed' | null = $derived.by(() =>
    this.#brokenOff !== null && same(this.#brokenOff.key, this.#key()) ? this.#brokenOff.how : null,
  )

  /** Whether what is looked for is still to be found: nothing was so far, or what was is of before a change. */
  readonly isAwaited: boolean = $derived.by(() => this.#looked && !this.isCurrent && this.brokenOff === null)

  /** In an effect: begins a pause after each change; what the effect leaves behind is dropped. */
  follow(wanted = true): () => void {
    const key = this.#key()
    this.#looked = wanted
    const away = () => {
      this.#looked = false
    }
    if (!wanted || this.isCurrent || this.brokenOff !== null) return away
    // At once for whoever comes to look; after a change, a pause later, even where nothing was found before it.
    const changed = this.#followed !== null && !same(this.#followed, key)
    this.#followed = key
    const timer = setTimeout(() => this.run(), this.#found === null && !changed ? 0 : this.#pause)
    return () => {
      away()
      clearTimeout(timer)
      this.drop()
    }
  }

  run(): void {
    this.drop()
    const key = this.#key()
    const turn = this.#turn
    this.running = { done: 0, total: 1, secondsLeft: null }
    const held = this.#begin({
      progress: (done, total, secondsLeft) => {
        if (turn === this.#turn) this.running = { done, total, secondsLeft }
      },
      told: (outcome) => {
        if (turn === this.#turn && this.running !== null) this.#early = { key, outcome }
      },
      ended: (how, outcome) => {
        if (turn !== this.#turn) return
        this.#held = null
        this.#early = null
        this.running = null
        this.#brokenOff = how === 'finished' ? null : { key, how }
        if (outcome !== null) this.#found = { key, outcome }
      },
    })
    if (this.running !== null) this.#held = held
  }

  stop(): void {
    this.#held?.stop()
  }

  drop(): void {
    this.#turn += 1
    this.#held?.drop()
    this.#held = null
    this.#early = null
    this.running = null
  }

  /** Another build was opened. */
  forget(): void {
    this.drop()
    this.#found = null
    this.#followed = null
    this.#brokenOff = null
  }
}

const same = (one: readonly unknown[], other: readonly unknown[]) =>
  one.length === other.length && one.every((part, at) => part === other[at])
