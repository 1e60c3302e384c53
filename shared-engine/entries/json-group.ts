/** A group of entries as it came out of JSON, nothing in it checked. */
export type JsonGroup = Readonly<Record<string, unknown>>

/** Whether a value that came out of JSON is keys and values in braces. */
export function isJsonGroup(value: unknown): value is JsonGroup {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
