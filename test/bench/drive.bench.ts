import { readFileSync } from 'node:fs'
import path from 'node:path'
import { readPattern } from '../../shared-engine/drive/read.ts'
import { DriveUnderWay } from '../../shared-engine/drive/run.ts'
import { readBuild } from '../../shared-engine/entries/read.ts'
import { keptAs, processorSeconds, repeated } from './measure.ts'

// Ten minutes of driving through time: the golden drives again and again, with spinning, braking, turns and soil, each
// from reading nothing to its figures, plots and books, in one thread.

const folder = path.join('test', 'golden', '2', 'heat')
const runs = 7
const seconds = 600

for (const number of ['01', '02', '04', '06']) {
  const build = readBuild(readFileSync(path.join(folder, `${number}.build.json`)))
  const pattern = readPattern(readFileSync(path.join(folder, `${number}.pattern.json`)))
  if (!build.ok || !pattern.ok) throw new Error(`golden ${number} does not read`)
  const round = pattern.value.rows.reduce((sum, row) => sum + row.seconds, 0)
  const rows = Array.from({ length: Math.ceil(seconds / round) }, () => pattern.value.rows).flat()
  let steps = 0
  const measured = repeated(runs, () => {
    const drive = new DriveUnderWay(build.value, { name: 'demo', notes: '', rows })
    const spent = processorSeconds(() => {
      drive.until(Infinity)
      drive.result()
    })
    steps = drive.tried
    return 1000 * spent
  })
  console.log(
    `golden drive ${number}, ten minutes in ${steps} steps: ${keptAs(`drive ${number}`, measured, 'ms', 1)}`,
  )
}
