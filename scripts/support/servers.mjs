// Web and worker in production, as `start` and the browser tests run them.
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { openLogFile } from './log-file.mjs'
import { dataDir, root } from './paths.mjs'
import { startNode } from './processes.mjs'
import { PlainError, say } from './say.mjs'
import { stopSignal } from './stop-signal.mjs'
import { keepUp } from './supervise.mjs'

const readySeconds = 90
/**
 * The web server's heap, in MB. Given gigabytes it lets what it has done with lie about: a hundred thousand hostile requests took it to 1.2 GB, with this limit to half.
 * What is large (files that are read, forecasts, archives) is held by processes aside and by the worker, or outside the heap.
 */
const webHeapMb = 512

/** Opens a log for a child's output; a long one from before is set aside. */
function openLog(name) {
  const dir = path.join(dataDir, 'logs')
  fs.mkdirSync(dir, { recursive: true })
  const file = path.join(dir, `${name}.log`)
  const fd = openLogFile(file)
  return { file, start: fs.fstatSync(fd).size, fd }
}

/** What a child that ended had to say: its last fatal message, else its last lines. */
function lastWords({ file, start }) {
  try {
    const lines = fs.readFileSync(file).subarray(start).toString('utf8').trim().split('\n')
    const fatal = lines.findLast((line) => line.startsWith('{"level":"fatal"'))
    return fatal ? JSON.parse(fatal).msg : lines.slice(-6).join('\n')
  } catch {
    return 'its log cannot be read' // gone, or cut in the middle of a line by a full disk
  }
}

/**
 * Starts the worker and the web server, and waits until /readyz answers; from then on, with `restarts`, either is started again when it ends by itself.
 * Resolves to { died, stop, pids }: `died` resolves to a sentence if one of them cannot be kept up.
 */
export async function startServers({ server, env, port, host = '127.0.0.1', logPrefix = '', restarts = true }) {
  const production = { ...env, NODE_ENV: 'production', DATA_DIR: dataDir, HOSTNAME: host, PORT: String(port) }
  const begin = (name, args, cwd) => () => {
    const log = openLog(`${logPrefix}${name}`)
    const started = startNode(name, args, { env: production, cwd, output: log.fd })
    fs.closeSync(log.fd)
    return { ...started, ended: started.ended.then((how) => `${how}: ${lastWords(log)}`) }
  }
  const worker = keepUp('worker', begin('worker', ['apps/worker/main.ts'], root), say)
  const web = keepUp(
    'web server',
    begin('web', [`--max-old-space-size=${webHeapMb}`, 'apps/web/front/serve.ts', path.dirname(server)], root),
    say,
  )
  const died = Promise.race([web.failed, worker.failed])
  const stop = () => Promise.all([web.stop(), worker.stop()])

  const address = host === '0.0.0.0' || host === '::' ? '127.0.0.1' : host
  const isReady = () =>
    fetch(`http://${address}:${port}/readyz`, { signal: AbortSignal.timeout(5000) }).then(
      (response) => response.ok,
      () => false,
    )
  try {
    for (const end = Date.now() + readySeconds * 1000; !(await isReady()); ) {
      const sad = await Promise.race([died, sleep(100)])
      if (sad) throw new PlainError(sad)
      stopSignal.throwIfAborted()
      if (Date.now() > end)
        throw new PlainError(`The web server did not become ready within ${readySeconds} seconds: see .data/logs/${logPrefix}web.log.`)
    }
  } catch (error) {
    await stop()
    throw error
  }
  if (restarts) for (const one of [web, worker]) one.settled()
  return { died, stop, pids: () => ({ web: web.pid(), worker: worker.pid() }) }
}
