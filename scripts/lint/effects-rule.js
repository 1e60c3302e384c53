/**
 * No assignment to state while an effect runs: what follows from state is derived, and what a person did is taken where it
 * is done. Left free is what an effect hands to others and what comes back later (an observer's answer, a timer's end).
 */

const runes = ['$state', '$derived', '$bindable']
const functions = ['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression']

/** The name of what is called: `$state` for `$state.raw(…)`. @param {any} node */
function calledName(node) {
  if (node?.type !== 'CallExpression') return null
  const { callee } = node
  return (callee.type === 'MemberExpression' ? callee.object.name : callee.name) ?? null
}

/** @param {any} node */
const isRune = (node) => runes.includes(calledName(node) ?? '')

/** Whether a value holds the page's state: the workspace, a question's state, what is taken out of either. @param {any} node */
const isWorkspace = (node) =>
  calledName(node) === 'useWorkspace' ||
  node?.name === 'workspace' ||
  (node?.type === 'CallExpression' && node.callee.property?.name === 'of')

/** The declaration that a name comes from. @param {any} scope @param {string} name @returns {any} */
function declaratorOf(scope, name) {
  for (let here = scope; here; here = here.upper) {
    const found = here.set.get(name)
    if (found) return found.defs[0]?.node ?? null
  }
  return null
}

/** Whether a prop of this name is bound to: `let { x = $bindable() } = $props()`. @param {any} pattern @param {string} name */
const isBindable = (pattern, name) =>
  pattern?.type === 'ObjectPattern' &&
  pattern.properties.some(
    (/** @type {any} */ one) => one.value?.left?.name === name && isRune(one.value.right),
  )

/** Whether `this.x` is state of its class. @param {any} ancestors @param {any} property */
function isClassState(ancestors, property) {
  const body = ancestors.find((/** @type {any} */ one) => one.type === 'ClassBody')?.body ?? []
  return body.some((/** @type {any} */ one) => one.key?.name === property?.name && isRune(one.value))
}

/** @param {any} target @param {any} scope @param {any[]} ancestors */
function isState(target, scope, ancestors) {
  if (target.type === 'Identifier') {
    const declarator = declaratorOf(scope, target.name)
    return isRune(declarator?.init) || isBindable(declarator?.id, target.name)
  }
  if (target.type !== 'MemberExpression') return false
  if (target.object.type === 'ThisExpression') return isClassState(ancestors, target.property)
  let root = target
  while (root.type === 'MemberExpression') root = root.object
  if (root.type !== 'Identifier') return false
  const declarator = declaratorOf(scope, root.name)
  return isRune(declarator?.init) || isWorkspace(declarator?.init)
}

/** Whether a node is run while an effect runs; `untrack` runs what it is given at once. @param {any} node */
function isInEffect(node) {
  for (let here = node.parent; here; here = here.parent) {
    if (!functions.includes(here.type)) continue
    const name = calledName(here.parent)
    if (name !== 'untrack') return name === '$effect'
  }
  return false
}

/** @type {import('eslint').Rule.RuleModule} */
export const effectsRule = {
  meta: {
    type: 'problem',
    schema: [],
    messages: { state: 'no assignment to state inside an effect: derive it, or take it where it is done' },
  },
  create(context) {
    /** @param {any} node @param {any} target */
    const look = (node, target) => {
      if (!isInEffect(node)) return
      const { sourceCode } = context
      if (isState(target, sourceCode.getScope(node), sourceCode.getAncestors(node)))
        context.report({ node, messageId: 'state' })
    }
    return {
      AssignmentExpression: (node) => look(node, node.left),
      UpdateExpression: (node) => look(node, node.argument),
    }
  },
}
