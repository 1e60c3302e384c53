import { app, session, shell } from 'electron'
import { mayHave, mayNavigate, mayOpenOutside } from './policy.ts'

/** Puts policy.ts in force for every page that this program will ever have, before there is one. */
export function setupPolicy(): void {
  app.on('web-contents-created', (_created, contents) => {
    contents.on('will-navigate', (event) => {
      if (!mayNavigate(event.url)) event.preventDefault()
    })
    contents.on('will-redirect', (event) => event.preventDefault())
    contents.on('will-attach-webview', (event) => event.preventDefault())
    contents.setWindowOpenHandler(({ url }) => {
      if (mayOpenOutside(url)) void shell.openExternal(url)
      return { action: 'deny' }
    })
  })
  void app.whenReady().then(() => {
    const { defaultSession } = session
    defaultSession.setPermissionRequestHandler((_contents, permission, answer) => answer(mayHave(permission)))
    defaultSession.setPermissionCheckHandler((_contents, permission) => mayHave(permission))
    defaultSession.setDevicePermissionHandler(() => false)
  })
}
