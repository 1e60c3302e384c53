import type { Compared, ValidationCase } from './case.ts'
import { computations } from './table.ts'

const head = `# Against reality

What was measured on other machines beside what the program says of them. Formulas seldom mislead a builder; what is put
into them, and what they leave out, does. The page is made by \`node scripts/run.js validation\` from the inputs in
\`test/validation\`, and a test keeps it true to the engine.

*Error* is the program's figure over the measured one; against a range, over its nearer end, and 0 % within. *Assumed* names
inputs that were not published with the measurement and are ours. Where what would have to be put in is not known at all,
nothing is computed, for a machine made up to fit would prove nothing: *reported* is then what the comparison said when it
was made, and can't be repeated here.
`

const columns =
  '| what was measured | source | the program | error | direction | what to do |\n| --- | --- | --- | --- | --- | --- |'

const tail = `## What nothing from outside checks

No source with its inputs is known to us for these; their formulas are held only against their own algebra, hand-worked
numbers and other implementations.

| what | what there is instead |
| --- | --- |
| speed of a motor under load, of a motor that was measured | two measurements without their inputs (above) |
| sag of a pack of cells with all its leads | open-circuit tables of cells at rest in \`test/sources/cells-open-circuit.test.ts\`; one discharge whose cell's resistance is not known (above) |
| range of a machine whose mass, drag and speed are known | energy over a stated range, against an assumed machine (above) |
| heat of a measured motor | the heat balance solved by another solver in \`test/sources/thermal-ode.test.ts\` |
| front lift, climbing a slope | statics, in \`test/laws/front-lift.test.ts\` |
| strength of a drive tooth of rubber or plastic | a key of steel, which is sheared and pressed alike, in \`test/sources/shigley-key.test.ts\` |

What only holds a table or a hand-worked number still is in \`test/pins\` and shows nothing about reality.
`

function comparedOf(one: ValidationCase): Compared {
  if (one.inputs === null) {
    const figure = `inputs not published with it: not computed; reported: ${one.reported}`
    return { figure, error: 'not computed', direction: one.direction }
  }
  const compute = computations[one.id]
  if (compute === undefined) throw new Error(`nothing computes ${one.id}`)
  const compared = compute(one.inputs)
  const assumed = one.assumed === undefined ? '' : ` (*assumed*: ${one.assumed})`
  return { ...compared, figure: compared.figure + assumed }
}

function rowOf(one: ValidationCase): string {
  const { figure, error, direction } = comparedOf(one)
  return `| ${[one.measured, one.source, figure, error, direction, one.builder].join(' | ')} |`
}

/** The page: a table for each group, in the order of the cases. */
export function validationPage(cases: readonly ValidationCase[]): string {
  const groups = [...new Set(cases.map(({ group }) => group))]
  const tables = groups.map((group) => {
    const rows = cases.filter((one) => one.group === group).map(rowOf)
    return `## ${group}\n\n${columns}\n${rows.join('\n')}\n`
  })
  return [head, ...tables, tail].join('\n')
}
