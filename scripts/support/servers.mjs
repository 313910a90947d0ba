// Web and worker in production, as `start` and the browser tests run them.
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { dataDir, root } from './paths.mjs'
import { startNode } from './processes.mjs'
import { PlainError } from './say.mjs'
import { stopSignal } from './stop-signal.mjs'

const readySeconds = 90
const keepLogBytes = 20e6

/** Opens a log for a child's output; a long one from before is set aside. */
function openLog(name) {
  const dir = path.join(dataDir, 'logs')
  fs.mkdirSync(dir, { recursive: true })
  const file = path.join(dir, `${name}.log`)
  if (fs.existsSync(file) && fs.statSync(file).size > keepLogBytes) fs.renameSync(file, `${file}.old`)
  return { file, start: fs.existsSync(file) ? fs.statSync(file).size : 0, fd: fs.openSync(file, 'a') }
}

/** What a child that ended had to say: its last fatal message, else its last lines. */
function lastWords({ file, start }) {
  const lines = fs.readFileSync(file).subarray(start).toString('utf8').trim().split('\n')
  const fatal = lines.findLast((line) => line.startsWith('{"level":"fatal"'))
  return fatal ? JSON.parse(fatal).msg : lines.slice(-6).join('\n')
}

/**
 * Starts the worker and the web server, and waits until /readyz answers.
 * Resolves to { url, died, stop }: `died` resolves to a sentence if one of them ends by itself.
 */
export async function startServers({ server, env, port, host = '127.0.0.1', logPrefix = '' }) {
  const production = { ...env, NODE_ENV: 'production', HOSTNAME: host, PORT: String(port) }
  const begin = (name, args, cwd) => {
    const log = openLog(`${logPrefix}${name}`)
    const started = startNode(name, args, { env: production, cwd, output: log.fd })
    fs.closeSync(log.fd)
    const died = started.ended.then((how) => `The ${name === 'web' ? 'web server' : 'worker'} ${how}: ${lastWords(log)}`)
    return { ...started, died }
  }
  const worker = begin('worker', ['apps/worker/main.ts'], root)
  const web = begin('web', [server], path.dirname(server))
  const died = Promise.race([web.died, worker.died])
  const stop = async () => {
    await web.stop()
    await worker.stop()
  }

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
  return { died, stop }
}
