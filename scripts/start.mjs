// `npm start`: sets up what is missing, then serves web and worker in production until it is stopped.
import { setTimeout as sleep } from 'node:timers/promises'
import { prepareDatabase } from './prepare-database.mjs'
import { buildWeb, generateClient, presentBuild } from './support/build.mjs'
import { openEnvironment, readSettings } from './support/environment.mjs'
import { portInUse } from './support/free-port.mjs'
import { demoSignIns, loadDemoWhenEmpty, wantsDemo } from './support/load-demo.mjs'
import { announce, becomeTheOne, stepDown } from './support/only-start.mjs'
import { PlainError, say, tellError } from './support/say.mjs'
import { startServers } from './support/servers.mjs'
import { makeSetUpLink } from './support/set-up-link.mjs'
import { onStop, stopSignal } from './support/stop-signal.mjs'

const LEFT_BEHIND_MS = 15_000
const stops = []
const later = (stop) => stops.push(stop)

/** The app refuses such logins, and a changed catalogue, by itself; asked here too, so that the answer comes before a build of a minute. */
async function refuseBypassingLogins(env) {
  Object.assign(process.env, env)
  const { refuseBypassingLogins: refuse } = await import('@almanac/database/login-check')
  const { refuseChangedCatalogue } = await import('@almanac/database/catalogue-check')
  const { closeClients } = await import('@almanac/database/client')
  try {
    await refuse({ unmigrated: true })
    if (process.env.ACCEPT_CATALOGUE !== 'on') await refuseChangedCatalogue({ unmigrated: true })
  } catch (error) {
    throw new PlainError(error.message)
  } finally {
    await closeClients()
  }
}

async function start() {
  const stopped = onStop()
  const settings = readSettings()
  const { port, host } = settings
  const running = await becomeTheOne()
  if (running.address) return say(`Rebed Almanac is running already at ${running.address} (process ${running.pid}).`)
  later(stepDown)
  // Web and worker of a start that was killed are ending by themselves.
  for (const end = Date.now() + (running.leftBehind ? LEFT_BEHIND_MS : 0); Date.now() < end && (await portInUse(port, host)); ) {
    await sleep(200)
    stopSignal.throwIfAborted()
  }
  if (await portInUse(port, host))
    throw new PlainError(`Port ${port} is in use by another program: stop it, or choose another with PORT=${port + 1} npm start.`)

  const environment = await openEnvironment(settings)
  later(environment.stop)
  say(environment.embedded ? 'PostgreSQL is up' : 'using the PostgreSQL in DATABASE_URL')
  // After a kill or a restart nothing has changed: then nothing is looked at twice. Web and worker ask for themselves what the login and the catalogue are.
  let build = presentBuild()
  if (build) later(build.release)
  else {
    await generateClient()
    await refuseBypassingLogins(environment.env)
  }
  const applied = await prepareDatabase(environment.urls.MIGRATION_DATABASE_URL)
  say(applied.length ? `migrations applied: ${applied.join(', ')}` : 'the database is at the present version')
  stopSignal.throwIfAborted()
  if (wantsDemo(environment) && (await loadDemoWhenEmpty(environment, say))) say('the demo companies are loaded')
  stopSignal.throwIfAborted()
  const signIns = await demoSignIns(environment)
  const setUp = await makeSetUpLink(environment.env, { onlyWhenEmpty: true })

  if (!build) {
    say('building for production (about a minute, or seconds when nothing changed)')
    build = await buildWeb(() => say('another command is building: waiting for it'))
    later(build.release)
  }
  say('starting web and worker')
  const servers = await startServers({ server: build.server, env: environment.env, port, host })
  later(servers.stop)
  later(environment.lookAfter(say)) // let go first: what ends while all is being stopped stays down
  announce(environment.env.PUBLIC_URL)
  say(`ready: ${environment.env.PUBLIC_URL}`, console.log)
  for (const { role, email, password } of signIns) console.log(`          ${role.padEnd(12)} ${email.padEnd(32)} ${password}`)
  if (setUp) console.log(`          Set up your company, once, within three days: ${setUp.url}`)
  console.log('          Ctrl-C stops everything; logs are in .data/logs.')

  const how = await Promise.race([stopped, servers.died])
  if (how !== 'stop') throw new PlainError(how)
}

async function stopAll() {
  for (const stop of stops.splice(0).reverse()) await stop()
}

try {
  await start()
} catch (error) {
  if (!stopSignal.aborted) tellError(error)
}
if (stopSignal.aborted) say('stopping')
await stopAll().catch(tellError)
if (stopSignal.aborted) say('stopped; everything stored is kept')
process.exit()
