/** Bundled as text: the page may fetch nothing. */
const files = import.meta.glob<string>('../../examples/quick-sled-puller.log.csv', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** Our demo log, an invented run, and the demo build that ran it. */
export const demoLog = {
  build: 'quick-sled-puller',
  name: 'quick-sled-puller.log.csv',
  bytes: () => new TextEncoder().encode(Object.values(files)[0] ?? ''),
} as const
