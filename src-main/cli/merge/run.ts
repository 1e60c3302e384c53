import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { readPart, type PartFile } from '../parts/file.ts'
import { dividedKinds } from '../parts/kinds.ts'
import { isLike, unpacked } from '../parts/plain.ts'
import { mistake, report } from '../trouble.ts'
import { missingFrom, unlikeFirst } from './fits.ts'

interface First {
  readonly name: string
  readonly part: PartFile
  readonly kind: NonNullable<ReturnType<typeof dividedKinds.get>>
  readonly collector: ReturnType<NonNullable<ReturnType<typeof dividedKinds.get>>['job']['startCollector']>
  /** What an empty part looks like: what others are held against. */
  readonly like: unknown
}

/**
 * Puts parts together and prints the whole answer; gives the exit code. Each file is read, added and let go, so that a
 * thousand parts need no more room than one.
 */
export async function mergeParts(files: readonly string[], options: OptionValues, io: Io): Promise<number> {
  let first: First | null = null
  const names = new Map<number, string>()
  let sound = true
  for (const file of files) {
    const read = readPart(file)
    const part = read.ok ? read.value : null
    if (!read.ok) report(io, file, read.mistakes)
    else if (first === null) first = startedBy(file, read.value, io)
    if (part === null || first === null || !isTaken(first, file, part, names, io)) sound = false
  }
  if (first === null) return exit.unreadable
  const missing = missingFrom(first.part.part.of, names)
  if (missing !== null && sound) report(io, 'pitchline', [missing])
  if (missing !== null || !sound) return exit.unreadable
  return first.kind.tell(first.part.input, first.collector.outcome(), options, io)
}

/** What the first part that can be read is the beginning of; null after what is wrong with it has been reported. */
function startedBy(name: string, part: PartFile, io: Io): First | null {
  const kind = dividedKinds.get(part.job)
  const mistakes =
    kind === undefined
      ? [
          mistake('not-a-part', {
            value: `a part of "${part.job}"`,
            allowed: [...dividedKinds.keys()].join(', '),
          }),
        ]
      : kind.mistakesIn(part.input)
  if (kind === undefined || mistakes.length > 0) {
    report(io, name, mistakes)
    return null
  }
  const collector = kind.job.startCollector(part.input)
  return { name, part, kind, collector, like: collector.gathered?.() }
}

/** Adds a part; false after what is wrong with it has been reported. */
function isTaken(first: First, file: string, part: PartFile, names: Map<number, string>, io: Io): boolean {
  const { number, of } = part.part
  const unlike = unlikeFirst(first.name, first.part, part)
  const there = names.get(number)
  const found = unlike === null && there === undefined ? foundIn(part) : null
  if (unlike !== null) report(io, file, [unlike])
  else if (there !== undefined) {
    report(io, file, [mistake('part-twice', { value: `part ${number}/${of}`, allowed: there })])
  } else if (number > of || !isLike(found, first.like)) {
    report(io, file, [mistake('not-a-part', { value: 'what no part holds' })])
  } else {
    names.set(number, file)
    first.collector.add(found)
    return true
  }
  return false
}

function foundIn(part: PartFile): unknown {
  try {
    return unpacked(part.found)
  } catch (thrown) {
    if (thrown instanceof RangeError) return undefined
    throw thrown
  }
}
