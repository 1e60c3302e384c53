import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import path from 'node:path'

/**
 * `SHA256SUMS` in a folder, of each file in it that is published, to be checked with `sha256sum -c`.
 *
 * @returns what was written
 */
export function writeSums(out: string): string {
  const files = readdirSync(out).filter(
    (name) => !name.startsWith('.') && statSync(path.join(out, name)).isFile(),
  )
  const sums = files
    .filter((name) => !/\.(ya?ml|blockmap)$|^SHA256SUMS$/.test(name))
    .map((name) => {
      const sum = createHash('sha256')
        .update(readFileSync(path.join(out, name)))
        .digest('hex')
      return `${sum}  ${name}\n`
    })
    .join('')
  writeFileSync(path.join(out, 'SHA256SUMS'), sums)
  return sums
}
