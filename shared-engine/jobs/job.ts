import { z } from '../reference/zod.ts'

// Long work is cut into numbered items that any thread can do in any order: a kind of job says how many there are, does
// a range of them, and puts the parts together. What comes out does not depend on how the ranges were dealt out.

/** One thread's side of a job. It keeps what it found until it is taken. */
export interface JobWorker<Part> {
  /** Does the items `from` to `to − 1`; a call of a few milliseconds, the thread decides how many. */
  work(from: number, to: number): void
  /**
   * Where single items take long: does some of them, at least one, and stops where a Stop should be heard.
   *
   * @returns the first item that was not done
   */
  some?(from: number, to: number): number
  /** What was found since the last time, and the buffers in it that may be handed over instead of copied. */
  take(): { readonly part: Part; readonly transfer: readonly ArrayBuffer[] }
}

/** The asking side of a job: puts parts together, in whatever order they come. */
interface JobCollector<Part, Outcome> {
  add(part: Part): void
  /** The result so far; the whole result once every item is in. */
  outcome(): Outcome
  /** All that is in as one part, for another collector to add: of kinds that several computers can share. */
  gathered?(): Part
}

/** Items of a job: `from` to `to − 1`. */
export interface JobRange {
  readonly from: number
  readonly to: number
}

/** One kind of long work. `Input` and `Part` cross threads: plain data and typed arrays only. */
export interface JobKind<Input, Part, Outcome> {
  readonly name: string
  /** Done by one thread: its input, which may be large, is sent to that one alone. */
  readonly alone?: true
  /**
   * Most threads that are worth their start for this input: each has to make its own machine code, which for short work
   * takes longer than the work. All that there are where left out.
   */
  threadsFor?(input: Input): number
  /**
   * The input as it is sent to a thread, and buffers in it that are handed over with it: a copy that is given away is made
   * in a tenth of the time that cloning takes, for which the window would stand still. The input itself where left out.
   */
  sent?(input: Input): { readonly input: Input; readonly transfer: readonly ArrayBuffer[] }
  /** Whether there is something to be told before the end: once there is, it is heard of at once. */
  isTold?(outcome: Outcome): boolean
  /** How many items; 0 is allowed. */
  sizeOf(input: Input): number
  startWorker(input: Input): JobWorker<Part>
  startCollector(input: Input): JobCollector<Part, Outcome>
}

/** A kind whose types are known to its own file alone: what threads keep in their table. */
type AnyJobKind = JobKind<unknown, unknown, unknown>

/** Hides the types of a kind; what a thread is sent under its name was made by its own `runJob`. */
export function anyJob<Input, Part, Outcome>(kind: JobKind<Input, Part, Outcome>): AnyJobKind {
  return kind as AnyJobKind
}

/** How a thread comes to a kind of job: it is there, or loaded when the first is asked for. */
export type JobSource = () => AnyJobKind | Promise<AnyJobKind>

/** Every kind of job by its name. */
export type JobTable = ReadonlyMap<string, JobSource>

const run = z.number().int().nonnegative()
const place = z.number().int().nonnegative()

/** What a thread is asked: to open a job, to do a range of it, to close it (finished, stopped or overtaken). */
export const jobRequestSchema = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('open'), run, job: z.string(), input: z.unknown() }),
  z.strictObject({ type: z.literal('range'), run, from: place, to: place }),
  z.strictObject({ type: z.literal('close'), run }),
])
export type JobRequest = z.output<typeof jobRequestSchema>

/** What a thread answers: a range's part, or that it stumbled over a bug of ours. */
export const jobAnswerSchema = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('part'), run, from: place, to: place, part: z.unknown() }),
  z.strictObject({ type: z.literal('failed'), run, story: z.string() }),
])
type JobAnswer = z.output<typeof jobAnswerSchema>

/** One end of the line between the asking side and a thread, whatever kind of thread it is. */
export interface JobPort {
  post(message: JobRequest | JobAnswer, transfer: readonly ArrayBuffer[]): void
  /** Takes the listener for everything that arrives; one at a time. */
  listen(listener: (message: unknown) => void): void
}
