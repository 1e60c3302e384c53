import { memoryUsage } from 'node:process'
import path from 'node:path'
import { readFileSync } from 'node:fs'
import papaparse from 'papaparse'
import { readBuild } from '../../shared-engine/entries/read.ts'
import { LogReading } from '../../shared-engine/log/log.ts'
import { TextReader } from '../../shared-engine/log/text/reader.ts'
import { logJob } from '../../shared-engine/jobs/log.ts'
import { madeLog, rows } from './made-log.ts'
import { keptAs, processorSeconds, runsOf } from './measure.ts'

// A log of a million rows of eight columns: how long its text takes beside the bare parse of the library in the same
// run, how long all of it, and the memory that it needs. Processor seconds: a machine that does other things too does
// not show in them.

const runs = 5

const read = readBuild(readFileSync(path.join('examples', 'hut-hauler.build.json')))
if (!read.ok) throw new Error('the demo build cannot be read')
const build = read.value
const bytes = madeLog()
const megabytes = () => memoryUsage().rss / 2 ** 20

function bareParse(): void {
  const text = new TextDecoder().decode(bytes)
  new papaparse.Parser({ delimiter: ',', newline: '\n' }).parse(text, 0, false)
}

function readTextAlone(): void {
  const reader = new TextReader(bytes, {})
  for (let block = 0; block < reader.blocks; block += 1) reader.read(block)
  if ('code' in reader.result()) throw new Error('the text was refused')
}

function readAll(): void {
  const reading = new LogReading({ build, bytes, choice: {}, alarms: null })
  while (!reading.done) reading.step()
  if (reading.result()?.ok !== true) throw new Error('the log was refused')
}

/** What the window's thread does: all of it, and the channels as they are drawn, life and drive. */
function readForWindow(): void {
  const worker = logJob.startWorker({ build, bytes, choice: {}, alarms: null })
  worker.work(0, logJob.sizeOf({ build, bytes, choice: {}, alarms: null }))
  if (worker.take().part?.result.ok !== true) throw new Error('the log was refused')
}

const before = megabytes()
const all: number[] = []
const text: number[] = []
const bare: number[] = []
const shown: number[] = []
// The whole first, so that its memory is not hidden behind what the bare parse keeps.
readAll()
const needed = megabytes()
for (let run = 0; run < runs; run += 1) {
  all.push(processorSeconds(readAll))
  text.push(processorSeconds(readTextAlone))
  shown.push(processorSeconds(readForWindow))
  bare.push(processorSeconds(bareParse))
}
console.log(`log of ${rows.toLocaleString('en')} rows of 8 columns, ${(bytes.length / 1e6).toFixed(0)} MB`)
console.log(`  bare parse of the library     ${keptAs('Log, a million rows: bare parse', runsOf(bare), 's')}`)
console.log(
  `  text into numbers             ${keptAs('Log, a million rows: text into numbers', runsOf(text), 's')}`,
)
console.log(`  all: channels, story, facts   ${keptAs('Log, a million rows: all of it', runsOf(all), 's')}`)
console.log(
  `  all, drawn in the window      ${keptAs('Log, a million rows: all of it, as drawn', runsOf(shown), 's')}`,
)
console.log(`  text over bare parse          ${(runsOf(text).median / runsOf(bare).median).toFixed(2)}`)
console.log(`  all over bare parse           ${(runsOf(all).median / runsOf(bare).median).toFixed(2)}`)
console.log(`  memory: ${before.toFixed(0)} MB before, ${needed.toFixed(0)} MB after reading it whole`)
