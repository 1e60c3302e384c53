/**
 * The part of the power path whose fields hold an entry.
 *
 * @example partOfPath('stages.0.ratio') // 'stage.1'
 */
export function partOfPath(path: string): string {
  const [head = '', index = ''] = path.split('.')
  if (head === 'stages') return index === '' ? 'stages' : `stage.${Number(index) + 1}`
  return head === 'name' || head === 'notes' || head === '' ? 'build' : head
}

/**
 * The stored group whose entries a part's fields show.
 *
 * @example groupOfPart('stage.1') // 'stages.0'
 */
export function groupOfPart(part: string): string {
  const stage = /^stage\.(\d+)$/.exec(part)
  return stage === null ? part : `stages.${Number(stage[1]) - 1}`
}
