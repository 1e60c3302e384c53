import path from 'node:path'
import { arrows, orders, packages } from './arrows.js'

const parts = ['shared-engine', 'src-main', 'src-renderer', 'test', 'scripts']

/** @param {string} file path from the project's root, with forward slashes */
const partOf = (file) => parts.find((part) => file.startsWith(part + '/')) ?? file

/** @param {string} file @param {string} folder */
const isUnder = (file, folder) => folder === '' || file === folder || file.startsWith(folder + '/')

/** @param {string} name @param {string} pattern */
const matches = (name, pattern) =>
  pattern.endsWith('*') ? name.startsWith(pattern.slice(0, -1)) : name === pattern

/** @typedef {{ rank: number, folder: string }} Room where a file stands in its part's order, and in which folder */

/**
 * The room of a file: the longest entry of the order that holds it; null where none does.
 * @param {ReadonlyArray<string | readonly string[]>} order @param {string} file from the part's root
 * @returns {Room | null}
 */
function roomOf(order, file) {
  /** @type {Room | null} */
  let best = null
  for (const [rank, entry] of order.entries()) {
    for (const name of [entry].flat()) {
      const folder = name.endsWith('/*') ? file.split('/').slice(0, -1).slice(0, 2).join('/') : name
      const held = isUnder(file, folder) && (folder === name || matches(folder, name))
      if (held && folder.length > (best?.folder.length ?? -1)) best = { rank, folder }
    }
  }
  return best
}

/**
 * Where a file counts as standing. A kind of reduction lies in one folder for all floors of the engine, so that
 * `stages/<kind>/<floor>.ts` stands on the floor that it is named after; any other name there is of the floor of stages.
 * @param {string} part @param {string} file from the project's root
 * @returns {string} from the part's root
 */
function placeOf(part, file) {
  const inPart = file.slice(part.length + 1)
  const floor = part === 'shared-engine' ? /^stages\/[^/]+\/(.+)\.ts$/.exec(inPart)?.[1] : undefined
  return floor !== undefined && orders[part]?.includes(floor) ? `${floor}/${inPart}` : inPart
}

/**
 * The reason why a file may not import another one of its part, or null where it may. Paths are from the project's root.
 * @param {string} from @param {string} to
 */
export function orderMistakeOf(from, to) {
  const part = partOf(from)
  const order = orders[part]
  if (order === undefined) return null
  const [here, there] = [from, to].map((file) => roomOf(order, placeOf(part, file)))
  if (!here) return `${from} is not in the order of folders of ${part}`
  if (!there) return `${to} is not in the order of folders of ${part}`
  if (here.folder === there.folder || there.rank < here.rank) return null
  const how = here.rank === there.rank ? 'stands beside' : 'comes before'
  return `${here.folder} ${how} ${there.folder} in the order of ${part}`
}

/**
 * Why a file may not import a specifier, or null where it may.
 * @param {string} from importing file, from the project's root, forward slashes
 * @param {string} specifier as written
 * @param {boolean} typesOnly
 * @returns {string | null}
 */
export function arrowMistakeOf(from, specifier, typesOnly) {
  const part = partOf(from)
  if (!specifier.startsWith('.') && !specifier.startsWith('/')) {
    /** @type {string[] | undefined} */
    const allowed = /** @type {Record<string, string[]>} */ (packages)[part]
    if (!allowed || allowed.some((pattern) => matches(specifier, pattern))) return null
    return `${part} may not import the package '${specifier}'`
  }
  const to = path.posix.join(path.posix.dirname(from), specifier.replace(/\?.*$/, ''))
  if (part === partOf(to)) return orderMistakeOf(from, to)
  const arrow = arrows.find((one) => isUnder(from, one.from) && isUnder(to, one.to))
  if (!arrow) return `${part} may not import ${to}`
  if (arrow.mode === 'types' && !typesOnly) return `${part} may import ${to} for types only`
  return null
}

/** @param {any} node */
const isTypesOnly = (node) =>
  node.type === 'TSImportType' || node.importKind === 'type' || node.exportKind === 'type'

/** @type {import('eslint').Rule.RuleModule} */
export const arrowsRule = {
  meta: { type: 'problem', schema: [], messages: { arrow: '{{why}} (scripts/lint/arrows.js)' } },
  create(context) {
    const from = path.relative(context.cwd, context.filename).split(path.sep).join('/')
    /** @param {any} node */
    const look = (node) => {
      const source = node.source ?? node.argument?.literal ?? node.argument
      if (typeof source?.value !== 'string') return
      const why = arrowMistakeOf(from, source.value, isTypesOnly(node))
      if (why) context.report({ node, messageId: 'arrow', data: { why } })
    }
    return {
      ImportDeclaration: look,
      ImportExpression: look,
      ExportAllDeclaration: look,
      ExportNamedDeclaration: look,
      TSImportType: look,
    }
  },
}
