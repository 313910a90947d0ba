// The field's service worker, made into one file by make-worker.mjs, which knows what the shell is made of. It keeps the shell and nothing that a server
// answers: what people read lies in the browser's database, under their company and name.
import { NavigationRoute, NetworkOnly, Route, Serwist } from 'serwist'

/** With a weak signal a page may hang for ever: after this long the shell is shown instead. */
const PATIENCE_S = 3
const SHELL = '/field'
const FIELD = /^\/(today|visits\/[^/]+)$/

const worker = new Serwist({
  precacheEntries: PRECACHED,
  precacheOptions: { cleanupOutdatedCaches: true },
  skipWaiting: true,
  clientsClaim: true,
})

const fromNetwork = new NetworkOnly({ networkTimeoutSeconds: PATIENCE_S })
const shell = worker.createHandlerBoundToUrl(SHELL)

/** A page from the server; without one, or where it does not answer in time, the shell. What the server says itself (sign in first, no such visit) is passed on. */
async function pageOrShell(options) {
  try {
    const answer = await fromNetwork.handle(options)
    if (answer.status < 500) return answer
  } catch {
    // No server: below.
  }
  return shell(options)
}

worker.registerRoute(new NavigationRoute(pageOrShell, { allowlist: [FIELD] }))
// A step from page to page asks for the page's parts. Where they don't come the page is loaded whole, and so the shell.
worker.registerRoute(
  new Route(({ request, url, sameOrigin }) => sameOrigin && FIELD.test(url.pathname) && request.headers.has('rsc'), fromNetwork),
)
worker.addEventListeners()
