/** Options that say how a log is to be read, of every verb that reads one. */
export const choiceOptions = [
  { flags: '--columns <file>', about: 'what columns mean, where the program would not see it' },
  { flags: '--time <column>', about: 'the column that holds the time: its heading, or its number from 1' },
]

/** Option of the verbs that ask what held a machine back. */
export const inAirOption = {
  flags: '--in-air <from-to>',
  about: 'seconds that were driven with the loops in the air, such as 12-30,80-95',
}
