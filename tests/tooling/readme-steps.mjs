// The README's steps for one's own PostgreSQL, run as they stand there, on a PostgreSQL of the system (Debian's, say): a test of the words as much as of the code.
import { execFileSync, spawn, spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { plainUser } from '../../scripts/support/cluster-place.mjs'
import { freePort } from '../../scripts/support/free-port.mjs'
import { root } from '../../scripts/support/paths.mjs'
import { PlainError } from '../../scripts/support/say.mjs'

const patienceSeconds = 100
const asRoot = process.getuid?.() === 0

/** Where a PostgreSQL server of the system has its programs, or undefined. */
function programs() {
  const places = fs.existsSync('/usr/lib/postgresql')
    ? fs.readdirSync('/usr/lib/postgresql').map((version) => `/usr/lib/postgresql/${version}/bin`)
    : []
  const onPath = spawnSync('sh', ['-c', 'command -v initdb'], { encoding: 'utf8' }).stdout.trim()
  return [...places.sort().reverse(), ...(onPath ? [path.dirname(onPath)] : [])].find((place) => fs.existsSync(path.join(place, 'initdb')))
}

/** Finds the system's PostgreSQL; root on Debian gets it. Undefined where there is none to be had. */
function findOrInstall(say) {
  const found = programs()
  if (found || !asRoot || spawnSync('sh', ['-c', 'command -v apt-get']).status !== 0) return found
  say('getting PostgreSQL from the Debian packages')
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  spawnSync('sh', ['-c', 'apt-get update -qq && apt-get install -y -qq --no-install-recommends postgresql'], { env, stdio: 'ignore' })
  return programs()
}

/** The commands of the section, in the order in which they stand: what follows a numbered step between backquotes, on lines or in the text. */
function readSteps(readme) {
  const section = readme.split('## On your own PostgreSQL')[1]?.split('\n## ')[0] ?? ''
  const quoted = [...section.matchAll(/`([^`]+)`/g)].map(([, text]) => text)
  const find = (what, pattern) => {
    const step = quoted.find((text) => pattern.test(text))
    if (!step) throw new PlainError(`The README's section on an own PostgreSQL no longer says how to ${what}.`)
    return step
  }
  return {
    roles: find('make the roles', /roles-sql \| psql/),
    passwords: find('give passwords', /^ALTER ROLE/),
    start: find('start', /npm start$/),
  }
}

/** Starts a cluster as the system's package has it, trusted on this machine; resolves to { port, stop }. */
async function openCluster(bin, folder) {
  const as = asRoot ? plainUser() : {}
  const data = path.join(folder, 'cluster')
  fs.mkdirSync(data, { mode: 0o700 })
  if (asRoot) fs.chownSync(data, as.uid, as.gid)
  execFileSync(
    path.join(bin, 'initdb'),
    ['-D', data, '-U', 'postgres', '--auth=trust', '--auth-host=scram-sha-256', '--encoding=UTF8', '--locale=C', '-N'],
    { ...as, cwd: '/', stdio: 'ignore' },
  )
  const port = await freePort()
  const server = spawn(
    path.join(bin, 'postgres'),
    ['-D', data, '-p', String(port), '-k', data, '-c', 'listen_addresses=127.0.0.1', '-c', 'fsync=off'],
    { ...as, cwd: '/', stdio: 'ignore' },
  )
  const ended = new Promise((resolve) => server.once('exit', resolve))
  for (let tries = 0; !fs.existsSync(path.join(data, `.s.PGSQL.${port}.lock`)) && tries < 300; tries++) await sleep(100)
  return {
    env: { PGHOST: data, PGPORT: String(port), PGUSER: 'postgres', PGDATABASE: 'postgres' },
    port,
    stop: async () => {
      server.kill('SIGINT')
      await ended
    },
  }
}

/** Waits until a process has said something, then asks it and its own to end; resolves to all it said. */
async function untilSaid(app, what) {
  let said = ''
  const ended = new Promise((resolve) => app.once('close', resolve))
  for (const stream of [app.stdout, app.stderr])
    stream.on('data', (text) => {
      said += text
    })
  for (const end = Date.now() + patienceSeconds * 1000; !what.test(said); await sleep(100))
    if (app.exitCode !== null || Date.now() > end)
      throw new PlainError(`README: its start line did not come as far as "${what.source}". ${said.slice(-1500)}`)
  process.kill(-app.pid, 'SIGTERM')
  await ended
  return said
}

/**
 * Makes roles and database as the README says, and starts from them with its own start line, the dots filled in. Resolves to 'not run' when no PostgreSQL of the
 * system is to be had; throws where a step does not do what it says.
 */
export async function runReadmeSteps(say) {
  const bin = findOrInstall(say)
  if (!bin) return 'not run'
  const steps = readSteps(fs.readFileSync(path.join(root, 'README.md'), 'utf8'))
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-readme-'))
  fs.chmodSync(folder, 0o755)
  const cluster = await openCluster(bin, folder)
  let app
  try {
    const shell = (command, env = {}) =>
      spawnSync('sh', ['-c', command], {
        cwd: root,
        env: { ...process.env, PATH: `${bin}:${process.env.PATH}`, ...cluster.env, ...env },
        encoding: 'utf8',
      })
    const mustRun = (what, result) => {
      if (result.status !== 0 || /ERROR/.test(result.stderr))
        throw new PlainError(`README, ${what}: ${result.stderr.trim() || `ended with ${result.status}`}`)
    }
    mustRun('roles', shell(`${steps.roles} -v ON_ERROR_STOP=1`))
    mustRun('passwords', shell(`psql -v ON_ERROR_STOP=1 -c "${steps.passwords.replaceAll('…', 'of the test')}"`))

    const settings = steps.start
      .replaceAll(':…@host/', `:of%20the%20test@127.0.0.1:${cluster.port}/`)
      .replace('AUTH_SECRET=…', 'AUTH_SECRET=only-for-the-test-of-the-readme-steps')
    if (/…/.test(settings)) throw new PlainError(`README: the start line has dots that the test does not know: ${settings}`)
    const run = (line, until) => {
      const {
        DATABASE_URL: _,
        IDENTITY_DATABASE_URL: __,
        MIGRATION_DATABASE_URL: ___,
        DEMO: ____,
        PUBLIC_URL: _____,
        HOST: ______,
        ...env
      } = process.env
      app = spawn('sh', ['-c', `exec env ${line}`], {
        cwd: root,
        env: { ...env, LOG_LEVEL: 'info', PORT: String(port), DATA_DIR: path.join(folder, 'data') },
        stdio: ['ignore', 'pipe', 'pipe'],
        detached: true,
      })
      return untilSaid(app, until)
    }
    const port = await freePort()
    // As far as the build, which takes minutes and is the same for every database, or may stand already; then one of the two that it would start.
    const said = await run(settings, /building for production|starting web and worker/)
    await run(settings.replace('npm start', `${process.execPath} apps/worker/main.ts`), /worker is ready/)
    // Strangers must find no sign-in of ours in an operator's database.
    const people = shell('psql -Atc "select count(*) from person" almanac')
    mustRun('a look at the people', people)
    if (people.stdout.trim() !== '0' || /example\.com|demo companies are loaded/.test(said))
      throw new PlainError('README: the demo was loaded into an own database that nobody asked it into.')
    return 'run'
  } finally {
    if (app && app.exitCode === null && app.signalCode === null) process.kill(-app.pid, 'SIGKILL')
    await cluster.stop()
    fs.rmSync(folder, { recursive: true, force: true })
  }
}
