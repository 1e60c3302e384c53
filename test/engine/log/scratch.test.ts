import { test } from 'vitest'
import { readFileSync } from 'node:fs'
import { TextReader } from '../../../shared-engine/log/text/reader.ts'
import { readBuild } from '../../../shared-engine/entries/read.ts'
import { readLog } from '../../../shared-engine/log/read.ts'
import { resultOf } from '../../../shared-engine/log/result.ts'
import { readAlarms } from '../../../shared-engine/log/facts/alarms.ts'
function diff(p: string, a: any, b: any, out: string[]) {
  if (p.endsWith('.sentence') || p === '.notes' || p === '.format' || p === '.version') return
  if (typeof a === 'number' && typeof b === 'number') { if (Math.abs(a - b) > 1e-6 * Math.abs(b) + 1e-6) out.push(`${p}: ${a} want ${b}`); return }
  if (Array.isArray(a) && Array.isArray(b) && (p === '.episodes')) {
    const key = (x: any) => x.kind + '@' + x.segment + ':' + x.start.toFixed(2)
    const A = new Map(a.map((x: any) => [key(x), x])), B = new Map(b.map((x: any) => [key(x), x]))
    for (const [k, x] of B) { if (!A.has(k)) out.push(`MISSING ${k} ${JSON.stringify(x).slice(0, 300)}`); else diff(p + '.' + k, A.get(k), x, out) }
    for (const [k, x] of A) if (!B.has(k)) out.push(`EXTRA ${k} ${JSON.stringify(x).slice(0, 300)}`)
    if (a.map(key).join() !== b.map(key).join()) out.push('order differs')
    return
  }
  if (a && b && typeof a === 'object' && typeof b === 'object') {
    for (const k of new Set([...Object.keys(a), ...Object.keys(b)])) diff(p + '.' + k, a[k], b[k], out)
    return
  }
  if (a !== b) out.push(`${p}: ${JSON.stringify(a)} want ${JSON.stringify(b)}`)
}
test('x', () => {
  for (let i = 1; i <= 12; i++) {
    const n = String(i).padStart(2, '0')
    const r = new TextReader(readFileSync(`test/golden/logs/${n}.csv`), {})
    for (let b = 0; b < r.blocks; b++) r.read(b)
    const x = r.result()
    const e = JSON.parse(readFileSync(`test/golden/logs/${n}.expected.json`, 'utf8'))
    if ('code' in x) { console.log(n, x); continue }
    const build = readBuild(readFileSync(`test/golden/logs/${n}.build.json`))
    if (!build.ok) throw new Error('b')
    const log = readLog(x, build.value, {})
    if (!log.ok) { console.log(n, log.mistakes); continue }
    const al = readAlarms(readFileSync(`test/golden/logs/${n}.alarms.json`))
    if (!al.ok) throw new Error('a')
    const res = JSON.parse(JSON.stringify(resultOf(log.value, al.value)))
    const out: string[] = []
    diff('', res, e, out)
    console.log(n, out.length ? '\n  ' + out.join('\n  ') : 'OK')
  }
})
