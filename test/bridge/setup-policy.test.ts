import { expect, it, vi } from 'vitest'
import { setupPolicy } from '../../src-main/shell/setup-policy.ts'

type Handler = (...given: unknown[]) => unknown

const set = vi.hoisted(() => new Map<string, Handler>())

// Whether a device answers or a person is asked depends on the machine; what the runtime is told to answer does not.
vi.mock('electron', () => {
  const keep = (name: string) => (handler: Handler) => void set.set(name, handler)
  return {
    app: { on: () => undefined, whenReady: () => Promise.resolve() },
    shell: {},
    session: {
      defaultSession: {
        setPermissionRequestHandler: keep('request'),
        setPermissionCheckHandler: keep('check'),
        setDevicePermissionHandler: keep('device'),
      },
    },
  }
})

// Names of Electron's documentation, session.setPermissionRequestHandler.
const permissions = [
  ...['clipboard-read', 'display-capture', 'fullscreen', 'geolocation', 'idle-detection', 'media', 'midi'],
  ...['mediaKeySystem', 'midiSysex', 'notifications', 'openExternal', 'pointerLock', 'window-management'],
]

it('every permission but writing the clipboard is denied, asked for or looked up, and every device', async () => {
  setupPolicy()
  await Promise.resolve()
  const asked = (permission: string) => {
    let answered: unknown
    set.get('request')?.(null, permission, (answer: unknown) => (answered = answer))
    return answered
  }
  const lookedUp = (permission: string) => set.get('check')?.(null, permission)
  for (const permission of permissions)
    expect([asked(permission), lookedUp(permission)], permission).toEqual([false, false])
  expect([asked('clipboard-sanitized-write'), lookedUp('clipboard-sanitized-write')]).toEqual([true, true])
  expect(set.get('device')?.({ deviceType: 'usb' })).toBe(false)
})
