// `npm run dev`: database, migrations, demo when empty, then Next's development server and the worker, both reloading on change.
import { prepareDatabase } from './prepare-database.mjs'
import { generateClient } from './support/build.mjs'
import { openEnvironment, readSettings } from './support/environment.mjs'
import { portInUse } from './support/free-port.mjs'
import { demoSignIns, loadDemoWhenEmpty, wantsDemo } from './support/load-demo.mjs'
import { startNode } from './support/processes.mjs'
import { PlainError, say, tellError } from './support/say.mjs'
import { onStop } from './support/stop-signal.mjs'

const stops = []
const stopAll = async () => {
  for (const stop of stops.splice(0).reverse()) await stop()
}

try {
  const stopped = onStop()
  const settings = readSettings()
  const { port } = settings
  if (await portInUse(port, 'localhost'))
    throw new PlainError(`Port ${port} is in use by another program: stop it, or choose another with PORT=${port + 1} npm run dev.`)
  const environment = await openEnvironment(settings)
  stops.push(environment.stop)
  say('PostgreSQL is up')
  await generateClient()
  const applied = await prepareDatabase(environment.urls.MIGRATION_DATABASE_URL)
  say(applied.length ? `migrations applied: ${applied.join(', ')}` : 'no migration is missing')
  if (wantsDemo(environment) && (await loadDemoWhenEmpty(environment, say))) say('demo loaded')
  for (const { email, password } of await demoSignIns(environment)) console.log(`          ${email.padEnd(32)} ${password}`)

  const env = { ...environment.env, NODE_ENV: 'development' }
  const worker = startNode('worker', ['--watch', 'apps/worker/main.ts'], { env })
  stops.push(worker.stop)
  const web = startNode('web', ['apps/web/front/serve.ts'], { env })
  stops.push(web.stop)
  const how = await Promise.race([
    stopped,
    web.ended.then((end) => `the web server ${end}`),
    worker.ended.then((end) => `the worker ${end}`),
  ])
  if (how !== 'stop') throw new PlainError(how)
  say('stopping')
} catch (error) {
  tellError(error)
}
await stopAll()
process.exit()
