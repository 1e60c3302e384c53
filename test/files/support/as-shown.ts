/** What a window saves that has kept nothing so far. */
export const asShown = (text: string) => ({ text, keeps: 0 })
