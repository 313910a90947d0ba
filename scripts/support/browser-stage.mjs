// The browser tests' world: a production build, a database with the demo, web and worker on a free port.
import pg from 'pg'
import { startPostgres } from '../postgres.mjs'
import { prepareDatabase } from '../prepare-database.mjs'
import { databaseUrls, setUpRoles } from '../set-up-roles.mjs'
import { buildWeb } from './build.mjs'
import { randomSecret } from './cluster-secrets.mjs'
import { freePort } from './free-port.mjs'
import { demoSignIns, loadDemoWhenEmpty } from './load-demo.mjs'
import { say } from './say.mjs'
import { startServers } from './servers.mjs'

/** A fresh database of this run's own on the cluster `name`; resolves to { urls, superUrl, env, close }. */
export async function openFreshDatabase({ name, volatile, port, usualLimits = false }) {
  const cluster = await startPostgres({ name, volatile })
  const database = `almanac_run_${process.pid}`
  const asSuperuser = async (sql) => {
    const client = new pg.Client({ connectionString: cluster.url('postgres', 'postgres') })
    await client.connect()
    await client.query(sql)
    await client.end()
  }
  const close = async () => {
    await asSuperuser(`DROP DATABASE IF EXISTS ${database} WITH (FORCE)`).catch(() => {})
    await cluster.stop()
  }
  try {
    await asSuperuser(`DROP DATABASE IF EXISTS ${database} WITH (FORCE)`)
    await setUpRoles(cluster, database)
    const urls = databaseUrls(cluster, database)
    await prepareDatabase(urls.MIGRATION_DATABASE_URL)
    // tests are quicker than people; a measurement of the limits themselves asks for the usual ones
    const limits = usualLimits ? {} : { SIGN_IN_TRIES_PER_MINUTE: '1000', REQUESTS_PER_MINUTE: '1000000' }
    const env = {
      ...urls,
      ...limits,
      AUTH_SECRET: randomSecret() + randomSecret(),
      PORT: String(port),
      PUBLIC_URL: `http://localhost:${port}`,
    }
    return { urls, superUrl: cluster.url('postgres', database), env, close }
  } catch (error) {
    await close()
    throw error
  }
}

/**
 * Builds, opens a database with the demo, serves. Resolves to { baseUrl, env, signIns, close }; `demo: false` leaves the database empty. Nothing that ends is started
 * again: a test must see it.
 */
export async function openApp({ name, volatile, demo = true, logPrefix, usualLimits }) {
  const closes = []
  const close = async () => {
    for (const one of closes.splice(0).reverse()) await one()
  }
  try {
    const build = await buildWeb(() => say('another command is building: waiting for it'))
    closes.push(build.release)
    say('built for production')
    const port = await freePort()
    const database = await openFreshDatabase({ name, volatile, port, usualLimits })
    closes.push(database.close)
    if (demo && (await loadDemoWhenEmpty(database, say))) say('the demo companies are loaded')
    const signIns = await demoSignIns(database, null)
    const servers = await startServers({ server: build.server, env: database.env, port, logPrefix, restarts: false })
    closes.push(servers.stop)
    void servers.died.then((sentence) => closes.length && say(sentence))
    // A test that stops a server of its own starts the same build: WEB_SERVER.
    const env = { ...database.env, WEB_SERVER: build.server }
    return { ...database, env, baseUrl: database.env.PUBLIC_URL, signIns, close }
  } catch (error) {
    await close()
    throw error
  }
}
