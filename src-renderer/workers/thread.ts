import { workFor } from './work.ts'

// The entry of a worker thread: the work, with the thread's own messages as its port.
workFor({
  post: (message, transfer) => self.postMessage(message, { transfer: [...transfer] }),
  listen: (listener) => {
    self.onmessage = ({ data }: MessageEvent<unknown>) => listener(data)
  },
})
