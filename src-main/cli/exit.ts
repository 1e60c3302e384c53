/** What the process says to the shell; the same for every command. */
export const exit = {
  /** Done, and nothing is over its limit. */
  within: 0,
  /** The build, a file or the command line could not be read. */
  unreadable: 1,
  /** Done, and something is over its limit. */
  over: 2,
} as const
