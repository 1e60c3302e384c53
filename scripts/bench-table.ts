/** One number of a bench: its median and the least and most seen. */
export interface Measured {
  readonly name: string
  readonly unit: string
  /** Whether less is better (times, memory) or more (rates). */
  readonly better: 'less' | 'more'
  readonly median: number
  readonly low: number
  readonly high: number
}

/** When and where a run of the benches was. */
export interface BenchRun {
  readonly day: string
  readonly commit: string
  /** System, architecture, cores, Node: what numbers can be compared within. */
  readonly machine: string
}

export type Row = Measured & BenchRun

export const rowsOf = (measured: readonly Measured[], run: BenchRun): Row[] =>
  measured.map((one) => ({ ...one, ...run }))

const head = `# What the benches measured

\`npm run bench -- --keep\` adds a row to each table: median and spread of one run, its commit and its machine. *Cost*
compares with the row before it: 1.20 is a fifth slower (or larger), 0.80 a fifth quicker, whichever way the unit counts;
from 1.10 on it is marked. It stands only where both rows are of one kind of machine. A machine that does other work at
the same time measures high and spreads wide: look at the spread before the ratio.
`

const columns =
  '| day | commit | median | least to most | cost | machine |\n| --- | --- | ---: | ---: | ---: | --- |'

const worse = 1.1

/** Four figures, as the benches print no more. */
const figures = (value: number): string => (value === 0 ? '0' : String(Number(value.toPrecision(4))))

/** How much more a row costs than the one before; empty where they cannot be compared. */
function costOf(before: string | undefined, { better, median, machine }: Row): string {
  if (before === undefined) return ''
  const cells = before.split('|').map((cell) => cell.trim())
  const [, , , said = '', , , where = ''] = cells
  const earlier = Number(said)
  if (where !== machine || !(earlier > 0) || !(median > 0)) return ''
  const cost = better === 'less' ? median / earlier : earlier / median
  return cost >= worse ? `**${cost.toFixed(2)} slower**` : cost.toFixed(2)
}

function lineOf(before: string | undefined, row: Row): string {
  const { day, commit, median, low, high, machine } = row
  const spread = `${figures(low)} to ${figures(high)}`
  return `| ${day} | ${commit} | ${figures(median)} | ${spread} | ${costOf(before, row)} | ${machine} |`
}

/** The tables of a page: title → rows, as they stand. */
function tablesOf(page: string): Map<string, string[]> {
  const tables = new Map<string, string[]>()
  let rows: string[] = []
  for (const line of page.split('\n')) {
    if (line.startsWith('## ')) tables.set(line.slice(3), (rows = []))
    else if (/^\| \d/.test(line)) rows.push(line)
  }
  return tables
}

/** The page with the rows of one more run, each below the last of its own table. */
export function withRun(page: string, rows: readonly Row[]): string {
  const tables = tablesOf(page)
  for (const row of rows) {
    const title = `${row.name} (${row.unit})`
    const lines = tables.get(title) ?? []
    tables.set(title, [...lines, lineOf(lines.at(-1), row)])
  }
  const texts = [...tables].map(([title, lines]) => `## ${title}\n\n${columns}\n${lines.join('\n')}\n`)
  return [head, ...texts].join('\n')
}
