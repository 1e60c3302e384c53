/** The content of a version: its number, then a length that differs from one to the next, so that a mix shows. */
export function contentOf(version: number): string {
  return `${version}\n${`line of ${version}\n`.repeat(50 + ((version * 37) % 400))}`
}

/** The version that a content is, `null` where it is none: torn, empty or a mix. */
export function versionOf(content: string): number | null {
  const version = Number(content.split('\n', 1)[0])
  return content !== '' && contentOf(version) === content ? version : null
}
