import { readFileSync, readdirSync } from 'node:fs'
import path from 'node:path'
import { parse, type EvalFunction } from 'mathjs'
import { readBuild } from '../../shared-engine/entries/read.ts'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import type { Build } from '../../shared-engine/entries/schema.ts'
import { evaluate } from '../../shared-engine/cases/evaluate.ts'
import { Evaluation } from '../../shared-engine/cases/evaluation.ts'
import { check } from '../../shared-engine/check.ts'
import { Ledger, worstMargin } from '../../shared-engine/limits/ledger.ts'
import { measureLedger } from '../../shared-engine/limits/measure.ts'
import { FigureValues, figureTable, setFigures } from '../../shared-engine/figures/table.ts'
import { workingOf } from '../../shared-engine/explain/table.ts'
import { keptAs, processorSeconds, repeated, told, type Runs } from './measure.ts'

// Full evaluations a second (every figure and limit, no working text) of the golden builds, in one thread, beside a
// general-purpose library that works out the algebra of the same workings, its roots and integrals given.

const folder = path.join('test', 'golden')
const runs = 7

const builds: readonly Build[] = readdirSync(folder)
  .filter((file) => file.endsWith('.build.json'))
  .map((file) => {
    const read = readBuild(readFileSync(path.join(folder, file)))
    if (!read.ok) throw new Error(`${file} does not read`)
    return read.value
  })

type Group = { readonly name: string; readonly machines: readonly Machine[] }

const machines = builds.map(machineOf)
const groups: readonly Group[] = [
  {
    name: 'ground by coefficients',
    machines: machines.filter((machine) => machine.ground.model === 'coefficient'),
  },
  {
    name: 'ground by soil',
    machines: machines.filter(
      (machine) => machine.ground.model === 'soil' && machine.track.loopStiffness === null,
    ),
  },
  {
    name: 'soil, teeth sharing by stiffness',
    machines: machines.filter((machine) => machine.track.loopStiffness !== null),
  },
]

const evaluation = new Evaluation()
const ledger = new Ledger()
const figures = new FigureValues()
let kept = 0

/** One whole evaluation; what it gives is used, so that nothing can be left out. */
function evaluateWhole(machine: Machine): void {
  evaluate(evaluation, machine)
  measureLedger(ledger, evaluation, machine)
  setFigures(figures, evaluation, machine)
  kept += worstMargin(ledger) + figures.motor.ratio
}

/** Millions of evaluations a processor second. */
function rateOf(list: readonly Machine[]): Runs {
  const rounds = Math.ceil(200_000 / list.length)
  return repeated(runs, () => {
    const seconds = processorSeconds(() => {
      for (let round = 0; round < rounds; round += 1) for (const machine of list) evaluateWhole(machine)
    })
    return (rounds * list.length) / seconds / 1e6
  })
}

/** Every step of every working of one build, compiled by the general library, with its symbols put in. */
function compiledOf(build: Build): { readonly work: EvalFunction; readonly scope: Map<string, number> }[] {
  const checked = check(build)
  const subjects = [...figureTable.map(({ name }) => name), ...checked.limits.map(({ id }) => id)]
  const compiled = new Map<string, { work: EvalFunction; scope: Map<string, number> }>()
  for (const subject of subjects) {
    const working = workingOf(checked, subject)
    if (working === null) continue
    const scope = new Map<string, number>()
    for (const { symbol, value } of [...working.symbols, ...working.steps]) scope.set(symbol, value ?? NaN)
    // a step that several workings share counts once, as it does in the engine
    for (const { symbol, expression, value } of working.steps) {
      const key = `${symbol} = ${expression} = ${value}`
      if (expression !== null) compiled.set(key, { work: parse(expression).compile(), scope })
    }
  }
  return [...compiled.values()]
}

function libraryRate(list: readonly Build[]): Runs {
  const compiled = list.map(compiledOf)
  const rounds = 20
  return repeated(3, () => {
    const seconds = processorSeconds(() => {
      for (let round = 0; round < rounds; round += 1) {
        for (const steps of compiled)
          for (const { work, scope } of steps) kept += Number(work.evaluate(scope))
      }
    })
    return (rounds * list.length) / seconds / 1e6
  })
}

console.log('Full evaluations, millions a processor second, one thread; median of', runs, '(least to most):')
rateOf(machines) // all kinds once, so that no group runs on code made for one kind alone
for (const { name, machines: list } of groups)
  console.log(`  ${name}: ${keptAs(`Full evaluations, ${name}`, rateOf(list), 'M/s')}`)
const ours = rateOf(machines)
console.log(`  all together: ${keptAs('Full evaluations, all together', ours, 'M/s')}`)
const library = libraryRate(builds)
console.log(`  mathjs on the same workings' algebra, roots and integrals given: ${told(library, 'M/s', 5)}`)
console.log(`  ratio: ${(ours.median / library.median).toFixed(0)}`)
const reading = repeated(runs, () => {
  const rounds = 5_000
  const seconds = processorSeconds(() => {
    for (let round = 0; round < rounds; round += 1)
      for (const build of builds) kept += machineOf(build).train.ratio
  })
  return (seconds / rounds / builds.length) * 1e6
})
console.log(`A build to a machine in SI: ${keptAs('A build to a machine in SI', reading, 'µs')}`)
if (Number.isNaN(kept))
  console.log('(the sum of everything is not a number, which keeps the work from being left out)')
