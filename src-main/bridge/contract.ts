import { z } from 'zod'
import type { Mistake, Result } from '../../shared-engine/mistakes/mistake.ts'
import { papers } from '../../shared-engine/report/paper.ts'
import { channels, type Verb } from './channels.ts'

/**
 * The bridge between page and desktop program: per verb its channel, what it takes and what it answers. receive.ts
 * refuses whatever does not fit; the page imports the types and nothing else. Every answer is a `Result`, so that a
 * refusal is an answer too; `null` means that the person cancelled.
 */

/** A build is a few kilobytes; this bounds what a page gone wrong can write. */
const mostText = 4 * 1024 * 1024
const mostExport = 64 * 1024 * 1024

const text = z.string().max(mostText)
const savedText = z.strictObject({ text, keeps: z.number().int().nonnegative() })
/** A suggestion for a dialog, never a path. */
const name = z
  .string()
  .min(1)
  .max(120)
  .regex(/^[^/\\:*?"<>|\p{Cc}]+$/u)
const handle = z.uuid()
const id = z.string().regex(/^[0-9a-f-]{8,64}$/)
const fingerprint = z.string().regex(/^[0-9a-f]{64}$/)
const content = z.custom<Uint8Array>((value) => value instanceof Uint8Array)
const bytes = content.refine(({ length }) => length <= mostExport)
const label = z.string().max(120).nullable()

const opened = z.object({ handle, name: z.string(), bytes: content, fingerprint })
const saved = z.object({ handle, name: z.string(), fingerprint })
const recentFile = z.object({ id, name: z.string(), place: z.string(), missing: z.boolean() })
const recovered = z.object({
  id,
  name: z.string(),
  text: z.string(),
  keptAt: z.string(),
  file: opened.nullable(),
  fileChangedSince: z.boolean(),
})

const mistake: z.ZodType<Mistake> = z.object({
  code: z.custom<Mistake['code']>((value) => typeof value === 'string'),
  path: z.string(),
  value: z.string(),
  allowed: z.string(),
  kept: z.string(),
})

const resultOf = <T extends z.ZodType>(value: T) =>
  z.union([
    z.object({ ok: z.literal(true), value }),
    z.object({ ok: z.literal(false), mistakes: z.array(mistake).readonly() }),
  ])

const facts = z.object({
  platform: z.enum(['mac', 'windows', 'linux']),
  version: z.string(),
  commit: z.string(),
  runtime: z.string(),
})
const start = z.object({
  opened: resultOf(opened).nullable(),
  recovered: z.array(recovered),
  afterCrash: z.boolean(),
})
const work = z.strictObject({
  name: z.string().min(1).max(200),
  text,
  handle: handle.nullable(),
  fingerprint: fingerprint.nullable(),
})
const shown = z.strictObject({ name: z.string().max(200), unsaved: z.boolean(), undo: label, redo: label })
const exportKind = z.enum(['svg', 'png', 'csv', 'html', 'md', 'json'])

/** One row per verb: `takes` the arguments in order, `gives` what its result holds. */
export const contract = {
  facts: { channel: channels.facts, takes: z.tuple([]), gives: facts },
  start: { channel: channels.start, takes: z.tuple([]), gives: start },
  open: { channel: channels.open, takes: z.tuple([]), gives: opened.nullable() },
  read: { channel: channels.read, takes: z.tuple([handle]), gives: opened },
  /** The path is put in by the preload script from the dropped file itself; the page cannot name one. */
  openDropped: {
    channel: channels.openDropped,
    takes: z.tuple([z.string().min(1).max(4096)]),
    gives: opened,
  },
  release: { channel: channels.release, takes: z.tuple([handle]), gives: z.null() },
  recent: { channel: channels.recent, takes: z.tuple([]), gives: z.array(recentFile) },
  openRecent: { channel: channels.openRecent, takes: z.tuple([id]), gives: opened },
  clearRecent: { channel: channels.clearRecent, takes: z.tuple([]), gives: z.null() },
  save: {
    channel: channels.save,
    takes: z.tuple([handle, savedText, z.union([fingerprint, z.literal('overwrite')])]),
    gives: saved,
  },
  saveAs: { channel: channels.saveAs, takes: z.tuple([name, savedText]), gives: saved.nullable() },
  exportFile: {
    channel: channels.exportFile,
    takes: z.tuple([exportKind, name, bytes]),
    gives: z.string().nullable(),
  },
  /** The page as it prints, on one of these papers; the page cannot say more of how. */
  exportPdf: {
    channel: channels.exportPdf,
    takes: z.tuple([z.enum(papers), name]),
    gives: z.string().nullable(),
  },
  keep: { channel: channels.keep, takes: z.tuple([work]), gives: z.null() },
  forget: { channel: channels.forget, takes: z.tuple([]), gives: z.null() },
  discardRecovered: { channel: channels.discardRecovered, takes: z.tuple([id]), gives: z.null() },
  show: { channel: channels.show, takes: z.tuple([shown]), gives: z.null() },
  newWindow: { channel: channels.newWindow, takes: z.tuple([]), gives: z.null() },
  /** The page has put the question of `close-asked`; one that hangs does not say so. */
  heardClose: { channel: channels.heardClose, takes: z.tuple([]), gives: z.null() },
  answerClose: { channel: channels.answerClose, takes: z.tuple([z.boolean()]), gives: z.null() },
} satisfies Record<Verb, { channel: string; takes: z.ZodType; gives: z.ZodType }>

export type Takes<V extends Verb> = z.output<(typeof contract)[V]['takes']>
export type Gives<V extends Verb> = z.output<(typeof contract)[V]['gives']>

/** What the window sends the page unasked. */
export type WindowEvent =
  | { readonly kind: 'command'; readonly id: string }
  | { readonly kind: 'close-asked' }
  | { readonly kind: 'changed-outside'; readonly handle: string; readonly gone: boolean }

/** What the page finds as `window.pitchline`. */
export type Bridge = {
  readonly [V in Exclude<Verb, 'openDropped'>]: (...words: Takes<V>) => Promise<Result<Gives<V>>>
} & {
  /** Takes the dropped file itself. */
  readonly openDropped: (file: File) => Promise<Result<Gives<'openDropped'>>>
  readonly listen: (listener: (event: WindowEvent) => void) => () => void
}
