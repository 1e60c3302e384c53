// Numbers that JSON does not have (NaN, ±Infinity, −0) and typed lists, written so that they come back to the bit.

const lists = { Float64Array, Uint32Array, Uint8Array } as const
type ListName = keyof typeof lists

/** Keys that stand for what JSON lacks; no part has one of its own. */
const listKey = '$list'
const numberKey = '$number'

const isListName = (name: unknown): name is ListName => typeof name === 'string' && name in lists

/** Plain data and typed lists as data that JSON can hold. */
export function packed(value: unknown): unknown {
  if (typeof value === 'number') return isOfJson(value) ? value : { [numberKey]: wordOf(value) }
  if (value === null || typeof value !== 'object') return value
  if (ArrayBuffer.isView(value)) {
    const bytes = Buffer.from(value.buffer, value.byteOffset, value.byteLength)
    return { [listKey]: value.constructor.name, bytes: bytes.toString('base64') }
  }
  if (Array.isArray(value)) return value.map(packed)
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, packed(inner)]))
}

const isOfJson = (value: number) => Number.isFinite(value) && !Object.is(value, -0)
const wordOf = (value: number) => (Object.is(value, -0) ? '-0' : String(value))

/** The data that `packed` was given; where it is none of its making, an error says so. */
export function unpacked(value: unknown): unknown {
  if (value === null || typeof value !== 'object') return value
  if (Array.isArray(value)) return value.map(unpacked)
  const group = value as Record<string, unknown>
  if (numberKey in group) return Number(group[numberKey])
  if (listKey in group) return listOf(group[listKey], group['bytes'])
  return Object.fromEntries(Object.entries(group).map(([key, inner]) => [key, unpacked(inner)]))
}

function listOf(name: unknown, base64: unknown) {
  if (!isListName(name) || typeof base64 !== 'string') throw new RangeError('a list of no known kind')
  const bytes = Uint8Array.from(Buffer.from(base64, 'base64'))
  if (bytes.length % lists[name].BYTES_PER_ELEMENT !== 0) throw new RangeError('a list that ends in a number')
  return new lists[name](bytes.buffer)
}

/** Whether a value is built like another one: the same keys, kinds and typed lists; what a list holds is not looked at. */
export function isLike(value: unknown, like: unknown): boolean {
  if (ArrayBuffer.isView(like)) return ArrayBuffer.isView(value) && value.constructor === like.constructor
  if (Array.isArray(like)) return Array.isArray(value)
  if (like === null || typeof like !== 'object') return like === null || typeof value === typeof like
  if (value === null || typeof value !== 'object') return false
  const [mine, theirs] = [value as Record<string, unknown>, like as Record<string, unknown>]
  const keys = Object.keys(theirs)
  return (
    Object.keys(mine).length === keys.length &&
    keys.every((key) => key in mine && isLike(mine[key], theirs[key]))
  )
}
