import type { SignOfLife } from './web-thread.ts'
import { workFor } from './work.ts'

// The entry of a worker thread: the work, with the thread's own messages as its port.
workFor({
  post: (message, transfer) => self.postMessage(message, { transfer: [...transfer] }),
  listen: (listener) => {
    self.onmessage = ({ data }: MessageEvent<unknown>) => listener(data)
  },
})

// Held for as long as this thread lives (web-thread.ts); a page without locks does without the sign of life.
if ('locks' in navigator) {
  void navigator.locks.request(self.name, () => {
    const sign: SignOfLife = { alive: self.name }
    self.postMessage(sign)
    return new Promise<never>(() => {})
  })
}
