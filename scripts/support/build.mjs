import { spawn } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { needDiskSpace } from './disk-space.mjs'
import { withLock } from './file-lock.mjs'
import { countLeases, takeLease } from './leases.mjs'
import { cloneDir, root } from './paths.mjs'
import { PlainError } from './say.mjs'
import { buildOf, noteBuild, sourcesMark } from './sources.mjs'
import { stopSignal } from './stop-signal.mjs'

const serveDir = path.join(cloneDir, 'serve')
const leasesOf = (name) => path.join(cloneDir, 'serve-users', name)

/** Where a tool of the project is. */
const toolPath = (name) =>
  name === 'node' ? process.execPath : path.join(root, 'node_modules/.bin', process.platform === 'win32' ? `${name}.cmd` : name)

/** Of a process and all that it will start. A courtesy: where the system does not allow it, it runs as it is. */
function lowerPriority(pid) {
  try {
    os.setPriority(pid, os.constants.priority.PRIORITY_BELOW_NORMAL)
  } catch (error) {
    if (error.code !== 'ERR_SYSTEM_ERROR') throw error
  }
}

/**
 * Runs a tool to its end; resolves to its exit code and its words. `show` lets them pass to the terminal as they come, `env` adds to the environment `base`, and
 * `giveWay` leaves the processor to whatever else wants it.
 */
export function runTool(name, args, { env = {}, base = process.env, show = false, giveWay = false } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(toolPath(name), args, {
      cwd: root,
      env: { ...base, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32',
      signal: stopSignal,
    })
    if (giveWay && child.pid) lowerPriority(child.pid)
    let words = ''
    for (const [from, to] of [
      [child.stdout, process.stdout],
      [child.stderr, process.stderr],
    ])
      from.on('data', (chunk) => {
        words += chunk
        if (show) to.write(chunk)
      })
    child.once('error', reject)
    child.once('close', (status) => resolve({ status: status ?? 1, words }))
  })
}

/** Runs turbo quietly: its words are shown only when something fails, and `problem` is the sentence for that. */
async function runTurbo(tasks, problem) {
  const { status, words } = await runTool('turbo', ['run', ...tasks, '--output-logs=errors-only', '--no-color'])
  if (status === 0) return
  if (/ENOSPC|no space left/i.test(words)) throw Object.assign(new Error('disk full'), { code: 'ENOSPC' })
  console.error(words.trim())
  throw new PlainError(problem)
}

/** Makes the Prisma client from the schema; skipped when neither changed. */
export const generateClient = () =>
  runTurbo(['generate'], 'The database client could not be made from prisma/schema: the lines above say where.')

/** Removes served builds that no living command uses. */
function removeOldBuilds(keep) {
  for (const name of fs.readdirSync(serveDir)) {
    if (name === keep || countLeases(leasesOf(name)) > 0) continue
    fs.rmSync(path.join(serveDir, name), { recursive: true, force: true })
    fs.rmSync(leasesOf(name), { recursive: true, force: true })
  }
}

/** Copies the finished build to a folder of its own: a later build must not pull files from under a running server. */
function copyBuild() {
  const next = path.join(root, 'apps/web/.next')
  const id = fs.readFileSync(path.join(next, 'BUILD_ID'), 'utf8').trim()
  const target = folderOf(id)
  if (!fs.existsSync(target)) {
    const half = `${target}.half`
    fs.rmSync(half, { recursive: true, force: true })
    fs.cpSync(path.join(next, 'standalone'), half, { recursive: true, verbatimSymlinks: true })
    fs.renameSync(half, target)
  }
  const build = served(id)
  removeOldBuilds(id)
  return { id, ...build }
}

const folderOf = (id) => path.join(serveDir, id)
const served = (id) => ({ server: path.join(folderOf(id), 'apps/web/server.js'), release: takeLease(leasesOf(id)) })

/** The build of the present sources, when the last command that built left it, and the database client that it was made with; undefined otherwise. */
export function presentBuild() {
  const id = buildOf(sourcesMark())
  if (id === undefined) return undefined
  const build = served(id) // first: from now on nobody removes it
  if (fs.existsSync(build.server) && fs.existsSync(path.join(root, 'packages/database/generated/client.ts'))) return build
  build.release()
  return undefined
}

/**
 * Builds web for production; skipped when no input changed. One build at a time, also between commands.
 * Resolves to { server, release }: the server's file in a folder that stays as it is until `release` is called.
 */
export function buildWeb(onWait) {
  const build = async () => {
    needDiskSpace(root, 700, 'the production build')
    const mark = sourcesMark()
    await runTurbo(['build'], 'The production build failed: the lines above say where.')
    fs.mkdirSync(serveDir, { recursive: true })
    const { id, ...build } = copyBuild()
    noteBuild(mark, id)
    return build
  }
  return withLock(path.join(cloneDir, 'build.lock'), build, onWait)
}
