import { app } from 'electron'

/** Nothing that the program asks by name or by number is found; its own page comes by a scheme that asks nobody. */
const resolverRules = 'MAP * ~NOTFOUND'

/**
 * The program has no network, and what runs it is kept from having one by itself: before there is a page, no name or
 * number leads anywhere; a page's calls to other machines get no datagrams (by stream they meet the rule above); and
 * no spelling list is fetched, which each new session otherwise does at once.
 */
export function setupNoNetwork(): void {
  app.commandLine.appendSwitch('host-resolver-rules', resolverRules)
  app.on('session-created', (session) => {
    session.setSpellCheckerEnabled(false)
    session.setSpellCheckerLanguages([])
  })
  app.on('web-contents-created', (_created, contents) => {
    contents.setWebRTCIPHandlingPolicy('disable_non_proxied_udp')
  })
}
