/**
 * Every word once, the one that is named most often first; equals keep the order in which they come.
 *
 * @example mostNamed(['a', 'b', 'b']) // ['b', 'a']
 */
export function mostNamed(words: readonly string[]): readonly string[] {
  const counts = new Map<string, number>()
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1)
  return [...counts].sort((one, other) => other[1] - one[1]).map(([word]) => word)
}
