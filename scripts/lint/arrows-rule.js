import path from 'node:path'
import { arrows, engineOrder, packages } from './arrows.js'

const parts = ['shared-engine', 'src-main', 'src-renderer', 'test', 'scripts']

/** @param {string} file path from the project's root, with forward slashes */
const partOf = (file) => parts.find((part) => file.startsWith(part + '/')) ?? file

/** @param {string} file @param {string} folder */
const isUnder = (file, folder) => folder === '' || file === folder || file.startsWith(folder + '/')

/** @param {string} name @param {string} pattern */
const matches = (name, pattern) =>
  pattern.endsWith('*') ? name.startsWith(pattern.slice(0, -1)) : name === pattern

/**
 * Place of an engine's file in the order: its folder's. A kind of reduction lies in one folder for all floors, so that
 * `stages/<kind>/<floor>.ts` stands on the floor that it is named after; any other name there is of the floor of stages.
 * @param {string} file
 */
function floorOf(file) {
  const [, folder = '', kind, name] = file.split('/')
  if (folder !== 'stages' || kind === undefined || name === undefined) return engineOrder.indexOf(folder)
  const named = engineOrder.indexOf(name.replace(/\.ts$/, ''))
  return named < 0 ? engineOrder.indexOf(folder) : named
}

/**
 * The reason why `from` may not import `to`, or null where it may. Paths are from the project's root.
 * @param {string} from @param {string} to
 */
export function engineMistakeOf(from, to) {
  const [here, there] = [from, to].map(floorOf)
  if (here === undefined || there === undefined) return null
  if (here < 0) return `${from} is not in the engine's order of folders`
  if (there < 0) return `${to} is not in the engine's order of folders`
  if (there > here) return `${engineOrder[here]} comes before ${engineOrder[there]} in the engine's order`
  return null
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
  if (part === partOf(to)) return part === 'shared-engine' ? engineMistakeOf(from, to) : null
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
