// Brings a database to the present version: the project's tables, then the task queue's own, both as the role that owns them.
import { installQueues, QUEUE_SCHEMA } from '@almanac/runtime/task-queue'
import pg from 'pg'
import { PgBoss } from 'pg-boss'
import { migrate } from '../packages/database/engine/migrate.mjs'
import { PlainError } from './support/say.mjs'

const LOCK = 7_261_003
const grants = `
  GRANT USAGE ON SCHEMA ${QUEUE_SCHEMA} TO almanac_app;
  GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA ${QUEUE_SCHEMA} TO almanac_app;
  GRANT USAGE ON ALL SEQUENCES IN SCHEMA ${QUEUE_SCHEMA} TO almanac_app;
  GRANT EXECUTE ON ALL FUNCTIONS IN SCHEMA ${QUEUE_SCHEMA} TO almanac_app;`

/** Installs or updates the queue's schema and queues. The app's login may use them, but makes no table. */
async function installQueue(url) {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    await client.query('SELECT pg_advisory_lock($1)', [LOCK])
    const boss = new PgBoss({
      connectionString: url,
      schema: QUEUE_SCHEMA,
      max: 2,
      supervise: false,
      schedule: false,
      reindex: false,
      monitorVacuum: false,
    })
    boss.on('error', () => {}) // a failure is thrown as well
    await boss.start()
    try {
      await installQueues(boss)
    } finally {
      await boss.stop({ graceful: false })
    }
    await client.query(grants)
  } finally {
    await client.end()
  }
}

/** Applies what is missing as `url`'s role, which owns the database. Returns the names of the migrations that were applied. */
export async function prepareDatabase(url) {
  let applied
  try {
    applied = await migrate(url)
  } catch (error) {
    throw new PlainError(
      `The database could not be brought to the present version; nothing of the failed step was kept. ${error.message ?? error}`,
    )
  }
  await installQueue(url)
  return applied
}
