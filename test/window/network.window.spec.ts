import { spawn } from 'node:child_process'
import { createSocket } from 'node:dgram'
import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { createServer, type AddressInfo } from 'node:net'
import path from 'node:path'
import { electronPath } from './launch/computer.ts'
import { expect, test } from './launch/open.ts'
import { wordsOf } from './launch/program.ts'

/** Something that listens on this machine, by datagram and by stream, and what reached it. */
async function listening() {
  const reached: string[] = []
  const datagrams = createSocket('udp4').on('message', () => reached.push('a datagram'))
  const streams = createServer((socket) => {
    reached.push('a connection')
    socket.on('error', () => undefined).destroy()
  })
  datagrams.bind(0, '127.0.0.1')
  streams.listen(0, '127.0.0.1')
  await Promise.all([once(datagrams, 'listening'), once(streams, 'listening')])
  const close = () => {
    datagrams.close()
    streams.close()
  }
  return {
    reached,
    datagram: datagrams.address().port,
    stream: (streams.address() as AddressInfo).port,
    close,
  }
}

test('nothing that the page tries reaches another program, by datagram or by stream', async ({ open }) => {
  const ear = await listening()
  const { page } = await open()
  const candidates = await page.evaluate(
    async ({ datagram, stream }) => {
      const secret = { username: 'hut', credential: 'hut' }
      const call = new RTCPeerConnection({
        iceServers: [
          { urls: `stun:127.0.0.1:${datagram}` },
          { urls: `turn:127.0.0.1:${datagram}`, ...secret },
          { urls: `turn:127.0.0.1:${stream}?transport=tcp`, ...secret },
          { urls: `turn:localhost:${stream}?transport=tcp`, ...secret },
        ],
      })
      const found: string[] = []
      call.onicecandidate = ({ candidate }) => candidate && found.push(candidate.candidate)
      call.createDataChannel('any')
      await call.setLocalDescription(await call.createOffer())
      for (const scheme of ['http', 'ws']) {
        const address = `${scheme}://127.0.0.1:${stream}/`
        const picture = new Image()
        picture.src = address
        await fetch(address).catch(() => undefined)
        try {
          new WebSocket(address)
        } catch {
          // As it should be.
        }
      }
      navigator.sendBeacon(`http://127.0.0.1:${stream}/`, 'any')
      await new Promise((done) => setTimeout(done, 3000))
      return found
    },
    { datagram: ear.datagram, stream: ear.stream },
  )
  expect(candidates).toEqual([])
  expect(ear.reached).toEqual([])
  ear.close()
})

test('from start to end the program asks no network for anything, not even for a name', async ({
  folder,
}) => {
  const notes = path.join(folder, 'network.json')
  const words = [`--log-net-log=${notes}`, ...wordsOf(folder)]
  const child = spawn(electronPath() ?? '', words, { cwd: folder, stdio: 'ignore' })
  const ended = once(child, 'exit')
  // Spelling lists were asked for within a second of the start.
  await new Promise((done) => setTimeout(done, 8000))
  child.kill('SIGTERM')
  await ended
  const text = readFileSync(notes, 'utf8')
  expect(text, 'the runtime notes what it asks for').toContain('"constants"')
  const asked = [...text.matchAll(/"(?:url|host|hostname)":"([^"]+)"/g)].map(([, what]) => what)
  expect(asked.filter((what) => what?.startsWith('app://pitchline/') !== true)).toEqual([])
})
