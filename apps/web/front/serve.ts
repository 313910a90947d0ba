// The web server: an HTTP server of our own in front of the framework's handler. `serve.ts FOLDER` serves the standalone build in FOLDER; without one it develops.
import fs from 'node:fs'
import http from 'node:http'
import { createRequire, flushCompileCache } from 'node:module'
import path from 'node:path'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'
import { log } from '@almanac/runtime/log'
import sirv from 'sirv'
import { trustedProxies } from './address.ts'
import { firstLook, type Look } from './first-look.ts'

/** For answers that are under way; pages that listen for changes would hold on for ever, and find the server again by themselves. */
const GRACE_MS = 3000
/** Scripts, styles and letters: each name has a sum of what is in the file, so that a browser may keep it. */
const KEEPABLE = '/_next/static/'
const YEAR_S = 31_536_000

type App = {
  prepare: () => Promise<void>
  getRequestHandler: () => (request: http.IncomingMessage, response: http.ServerResponse) => Promise<void>
  close: () => Promise<void>
}
type Next = (options: { dev: boolean; dir: string; hostname: string; port: number; httpServer: http.Server }) => App

async function serve(built: string | undefined): Promise<void> {
  const { PUBLIC_URL, TRUSTED_PROXIES } = config()
  const development = built === undefined
  const dir = built ?? path.resolve(import.meta.dirname, '..')
  const port = Number(process.env.PORT ?? 3000)
  const hostname = development ? 'localhost' : (process.env.HOSTNAME ?? '127.0.0.1')
  if (built !== undefined) {
    const files = JSON.parse(fs.readFileSync(path.join(built, '.next/required-server-files.json'), 'utf8')) as { config: object }
    process.env.__NEXT_PRIVATE_STANDALONE_CONFIG = JSON.stringify(files.config)
  }
  process.chdir(dir)

  const files =
    built === undefined ? null : sirv(path.join(built, '.next/static'), { brotli: true, gzip: true, immutable: true, maxAge: YEAR_S })
  const look: Look = { trusted: trustedProxies(TRUSTED_PROXIES), https: PUBLIC_URL.startsWith('https://'), development }
  let handle: ReturnType<App['getRequestHandler']> | undefined
  const server = http.createServer((request, response) => {
    if (firstLook(request, response, look)) return
    const { url = '/' } = request
    const toFramework = () => {
      request.url = url
      handle?.(request, response).catch((error: unknown) => {
        log().error({ error }, 'unexpected')
        response.destroy()
      })
    }
    if (!files || !url.startsWith(KEEPABLE)) return toFramework()
    request.url = url.slice(KEEPABLE.length - 1)
    files(request, response, toFramework)
  })
  const next = createRequire(path.join(dir, 'package.json'))('next') as Next
  const app = next({ dev: development, dir, hostname, port, httpServer: server })
  await app.prepare()
  handle = app.getRequestHandler()
  await new Promise<void>((resolve, reject) => server.once('error', reject).listen(port, hostname, resolve))
  log().info({ port, hostname }, 'web is ready')
  flushCompileCache() // for the next start, should this one be killed

  const stop = () => {
    server.close(() => process.exit(0))
    server.closeIdleConnections()
    setTimeout(() => process.exit(0), GRACE_MS).unref()
  }
  process.once('SIGTERM', stop)
  process.once('SIGINT', stop)
}

serve(process.argv[2]).catch((error: unknown) => {
  if (error instanceof AppError) log().fatal(error.message)
  else log().fatal({ error }, 'the web server cannot start')
  process.exit(1)
})
