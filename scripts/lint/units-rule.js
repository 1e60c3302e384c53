/**
 * No factor between units outside `shared-engine/units`: 60, 3600, 1000 and their like in a product or quotient, degrees
 * by hand, and 2π. There the factor has a name or a function (`secondsPerMinute`, `rpmOf`, `toEngine`); a whole turn of
 * plain geometry (r = a/2π) is `fullTurn` of `constants.ts`, so that a 2π left in a formula is a turn and no rpm.
 */

const numbers = [60, 3600, 86_400, 1000, 60_000, 3_600_000, 86_400_000, 1e-3, 3.6]

/** @param {any} node @returns {number | null} */
function numberOf(node) {
  if (node.type === 'UnaryExpression') return numberOf(node.argument)
  return node.type === 'Literal' && typeof node.value === 'number' ? node.value : null
}

/** @param {any} node */
const isPi = (node) =>
  node.type === 'MemberExpression' && node.object.name === 'Math' && node.property.name === 'PI'

/** What stands in a chain of these operators. @param {any} node @param {string[]} operators @returns {any[]} */
const chain = (node, operators) =>
  node.type === 'BinaryExpression' && operators.includes(node.operator)
    ? [...chain(node.left, operators), ...chain(node.right, operators)]
    : [node]

/**
 * Whether π and a number come together here, and not already on one side.
 * @param {any} node @param {number} number @param {string[]} operators
 */
function joinsPi(node, number, operators) {
  if (!operators.includes(node.operator)) return false
  const [left, right] = [chain(node.left, operators), chain(node.right, operators)]
  /** @param {any[]} all */
  const both = (all) => all.some(isPi) && all.some((one) => numberOf(one) === number)
  return both([...left, ...right]) && !both(left) && !both(right)
}

/** The number by which a node multiplies or divides, where it is one of units. @param {any} node */
function factorOf({ operator, left, right }) {
  if (!['*', '/', '*=', '/='].includes(operator)) return null
  return [left, right].map(numberOf).find((number) => number !== null && numbers.includes(number)) ?? null
}

/** @type {import('eslint').Rule.RuleModule} */
export const unitsRule = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      factor:
        '{{factor}} as a factor: units are crossed in shared-engine/units (factors.ts, convert.ts, rpm.ts)',
      degrees: 'degrees by hand: toEngine and fromEngine of shared-engine/units know angles',
      turn: '2π by hand: `fullTurn` of constants.ts for an angle, units/rpm.ts for turns per minute',
    },
  },
  create(context) {
    /** @param {any} node */
    const look = (node) => {
      const factor = factorOf(node)
      if (factor !== null) context.report({ node, messageId: 'factor', data: { factor: String(factor) } })
      if (joinsPi(node, 180, ['*', '/'])) context.report({ node, messageId: 'degrees' })
      if (joinsPi(node, 2, ['*'])) context.report({ node, messageId: 'turn' })
    }
    return { BinaryExpression: look, AssignmentExpression: look }
  },
}
