import type { Mistake } from './mistake.ts'
import { oneLine } from './shown.ts'

/** What a sentence is made of: a mistake without its code. */
type Details = Omit<Mistake, 'code'>

const at = ({ path }: Details) => (path === '' ? 'the file' : path)
const found = ({ value }: Details) => (value === '' ? 'nothing' : value)
const foundAfter = ({ value }: Details) => (value === '' ? '' : `, found ${value}`)
const allowed = ({ allowed }: Details) => (allowed === '' ? '' : `; allowed: ${allowed}`)

/**
 * Every sentence in which foreseen trouble is reported; the only place with wording. One plain line each: what happened
 * and where, then what is allowed. `sentenceOf` adds what stays in force.
 */
export const catalogue = {
  // The build file as bytes and as JSON.
  'empty-file': () => 'the file is empty; a build, readings and channels are JSON in braces',
  'too-large': (m) => `the file is too large: ${found(m)}${allowed(m)}`,
  'not-utf8': (m) => `the file is not UTF-8 text${m.value === '' ? '' : ` (${m.value})`}`,
  'not-json': (m) => `the file is not JSON${m.value === '' ? '' : `: ${m.value}`}`,
  'too-deep': (m) => `${at(m)} is nested too deeply${allowed(m)}`,
  'forbidden-key': (m) => `${at(m)} is a key that no file may have; take it out`,
  'duplicate-key': (m) => `${at(m)} stands in the file more than once; keep one`,
  'wrong-format': (m) => `${at(m)} is ${found(m)}: this is not a build file${allowed(m)}`,
  'newer-version': (m) =>
    `${at(m)} is ${found(m)}: the file is from a newer Pitchline than this one${allowed(m)}`,

  // Single entries.
  missing: (m) => `${at(m)} is missing${allowed(m)}`,
  'unknown-key': (m) => `${at(m)} is not an entry of a build${allowed(m)}`,
  'out-of-range': (m) => `${at(m)} is ${found(m)}, out of range${allowed(m)}`,
  'not-a-number': (m) => `${at(m)} is ${found(m)}, not a number${allowed(m)}`,
  'not-text': (m) => `${at(m)} is ${found(m)}, not text${allowed(m)}`,
  'too-long': (m) => `${at(m)} is too long: ${found(m)}${allowed(m)}`,
  'not-one-of': (m) => `${at(m)} is ${found(m)}, not one of the choices${allowed(m)}`,
  'not-in-table': (m) => `${at(m)} is ${found(m)}, which is not in its table${allowed(m)}`,
  'not-a-list': (m) => `${at(m)} is ${found(m)}, not a list${allowed(m)}`,
  'not-an-object': (m) => `${at(m)} is ${found(m)}, not a group of entries${allowed(m)}`,
  'too-many': (m) => `${at(m)} holds too many: ${found(m)}${allowed(m)}`,
  'path-not-in-file': (m) => `${at(m)} names ${found(m)}, which is not an entry of this file${allowed(m)}`,

  // Rules between entries, and builds that cannot work.
  'between-fields': (m) => `${at(m)} is ${found(m)}${allowed(m)}`,
  'cannot-feed-accessories': (m) =>
    `the pack cannot feed its accessories: ${at(m)} asks for ${found(m)}${allowed(m)}`,
  'soil-not-positive': (m) => `${at(m)} gives ${found(m)} as the stiffness of the soil${allowed(m)}`,

  // Files and the command line.
  'no-such-file': (m) => `there is no file ${m.value === '' ? 'of this name' : m.value}${allowed(m)}`,
  'is-a-folder': (m) => `${m.value === '' ? 'this' : m.value} is a folder, not a file${allowed(m)}`,
  'cannot-read': (m) => `the file cannot be read: ${found(m)}${allowed(m)}`,
  'cannot-write': (m) => `the file cannot be written: ${found(m)}${allowed(m)}`,
  'file-exists': (m) => `${found(m)} exists already and is not overwritten${allowed(m)}`,
  'file-changed-outside': (m) =>
    `${m.value} was changed by another program since it was read here${allowed(m)}`,
  'file-gone': (m) => `${m.value} is no longer where it was${allowed(m)}`,
  'file-open-elsewhere': (m) => `${m.value} is open in another window, which is now in front${allowed(m)}`,
  'file-read-only': (m) => `${m.value} is write-protected${allowed(m)}`,
  'file-not-permitted': (m) => `${m.value} may not be read or written by this account${allowed(m)}`,
  'file-in-use': (m) => `${m.value} is held by another program${allowed(m)}`,
  'disk-full': (m) => `there is no room left on the disk for ${m.value}${allowed(m)}`,
  'disk-trouble': (m) => `the disk failed at ${m.value}${allowed(m)}`,
  'disk-unconfirmed': (m) => `${m.value} is written, but the disk did not confirm it${allowed(m)}`,
  'request-refused': (m) => `the window refused what the page asked for: ${found(m)}${allowed(m)}`,
  'own-fault': (m) => `the program made a mistake of its own at ${found(m)}${allowed(m)}`,
  'stopped-early': () => 'stopped before anything was found; there is no result',
  'input-twice': (m) => `standard input can be read only once${allowed(m)}`,
  'unknown-option': (m) => `there is no option ${found(m)}${allowed(m)}`,
  'unknown-command': (m) => `there is no command ${found(m)}${allowed(m)}`,
  'missing-argument': (m) => `${found(m)} is missing${allowed(m)}`,
  'too-many-arguments': (m) => `${found(m)} is one argument too many${allowed(m)}`,
  'option-not-understood': (m) => `${at(m)} is ${found(m)}${allowed(m)}`,
  'unknown-subject': (m) => `there is no figure or limit ${found(m)}${allowed(m)}`,
  'no-such-limit': (m) => `the limit ${found(m)} does not apply to this build${allowed(m)}`,

  // Drive patterns.
  'not-a-pattern': (m) => `${at(m)} is ${found(m)}: this is not a drive pattern${allowed(m)}`,
  'unknown-pattern-key': (m) => `${at(m)} is not a part of a drive pattern${allowed(m)}`,
  'unknown-pattern': (m) => `there is no drive pattern ${found(m)}, and no file of this name${allowed(m)}`,

  // Readings of a bench test, and channels of a log: the path, then what is allowed there.
  'wrong-reading': (m) => `${at(m)}: ${m.allowed === '' ? 'not as it is' : m.allowed}${foundAfter(m)}`,

  // Search spaces and sweeps.
  'not-a-space': (m) => `${at(m)} is ${found(m)}: this is not a search space${allowed(m)}`,
  'unknown-space-key': (m) => `${at(m)} is not a part of a search space${allowed(m)}`,
  'wrong-length': (m) => `${at(m)} is ${found(m)}${allowed(m)}`,
  'wrong-shape': (m) => `${at(m)} is ${found(m)}, which does not belong there${allowed(m)}`,
  'cannot-vary': (m) => `${at(m)} cannot be varied here${allowed(m)}`,
  'listed-twice': (m) => `${at(m)} lists ${found(m)} more than once; once is enough`,
  'unknown-list': (m) => `${at(m)} names the list ${found(m)}, which the space does not have${allowed(m)}`,
  'quantity-not-understood': (m) => `${at(m)} is ${found(m)}, which is not understood${allowed(m)}`,
  'no-bound': (m) => `${at(m)} asks for nothing${allowed(m)}`,

  // Parts of a run that several computers share.
  'not-a-part': (m) => `the file is ${found(m)}: this is not a part of a divided run${allowed(m)}`,
  'part-damaged': (m) => `the part is not as it was printed: it has ${found(m)}${allowed(m)}`,
  'part-of-another-run': (m) => `the part is of another run than ${found(m)}: ${m.allowed}`,
  'part-twice': (m) => `${found(m)} was there already; remove this one or ${m.allowed}`,
  'part-missing': (m) => `parts are missing: ${found(m)}`,

  // Logs.
  'log-empty': () => 'the log holds nothing but blanks; a log is a table of text with a heading and rows',
  'log-binary': () =>
    'the log is not text: control characters stand near its beginning; export it as a table of text',
  'log-too-big': (m) => `the log is too big: ${found(m)}${allowed(m)}`,
  'log-one-column': () =>
    'the log has one column alone: no tab, semicolon, bar, comma or blank parts its lines into cells',
  'log-no-rows': () =>
    'the log has no rows of values: two lines of numbers with as many cells, one below the other, were not found',
  'log-no-time': () =>
    'the log has no time: no column is named time, and none holds times of day; say which column it is, or give the rows per second (command line: --time, --columns)',
  'log-no-values': () =>
    'the log has no values: no column could be given a meaning, or none of those has a number; name them in a file of columns',
  'log-columns': (m) => `${at(m)} is ${found(m)}: the file of columns does not fit${allowed(m)}`,
  'log-alarms': (m) => `${at(m)} is ${found(m)}: the file of alarms does not fit${allowed(m)}`,

  // What a builder types into a field.
  'entry-not-understood': (m) => `“${m.value}” is not understood${allowed(m)}`,
  'entry-wrong-unit': (m) => `“${m.value}” is not a unit of this entry${allowed(m)}`,
  'entry-ambiguous': (m) => `“${m.value}” can be read in two ways${allowed(m)}`,
} satisfies Record<string, (details: Details) => string>

/** Key of a sentence of the catalogue. */
export type MistakeCode = keyof typeof catalogue

/**
 * The sentence for a mistake, always one line, whatever bytes a file put into its keys and values.
 *
 * @example
 * sentenceOf({ code: 'out-of-range', path: 'pack.series', value: '99', allowed: '1 to 60 cells', kept: '12 cells' })
 * // 'pack.series is 99, out of range; allowed: 1 to 60 cells. Kept: 12 cells.'
 */
export function sentenceOf(mistake: Mistake): string {
  const details: Details = {
    path: oneLine(mistake.path, 160),
    value: oneLine(mistake.value, 160),
    allowed: oneLine(mistake.allowed, 400),
    kept: oneLine(mistake.kept, 160),
  }
  const wording: (details: Details) => string = catalogue[mistake.code]
  const kept = details.kept === '' ? '' : ` Kept: ${details.kept}.`
  return `${wording(details)}.${kept}`
}
