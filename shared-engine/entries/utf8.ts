/** The one thing that reading bytes needs beyond the language; every host of the engine has it. */
declare const TextDecoder: new (
  encoding: 'utf-8',
  options: { readonly fatal: boolean },
) => { decode(bytes: Uint8Array): string }

/** Bytes as text without a byte-order mark; null where they are not UTF-8. */
export function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return null
  }
}
