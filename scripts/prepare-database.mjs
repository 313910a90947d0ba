// Brings a database to the present version: the project's tables, then the task queue's own, both as the role that owns them.
import { CATALOGUE_FORMAT, CATALOGUE_QUERY, catalogueDifferences, FORMAT, MIGRATING, tellDifferences } from '@almanac/database/catalogue'
import { installQueues, QUEUE_SCHEMA } from '@almanac/runtime/task-queue'
import pg from 'pg'
import { PgBoss } from 'pg-boss'
import { migrate } from '../packages/database/engine/migrate.mjs'
import { PlainError, say } from './support/say.mjs'

const LOCK = 7_261_003
const CATALOGUE_LOCK = 7_261_005
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

/** What somebody changed beside the migrations since the last migrator finished; nothing when that is not known. */
async function changedSince(client, stored) {
  const noted = (name) => stored.find(({ thing }) => thing === name)?.is
  if (noted(FORMAT) !== CATALOGUE_FORMAT || noted(MIGRATING)) return []
  return catalogueDifferences(stored, (await client.query(CATALOGUE_QUERY)).rows)
}

/**
 * Runs `migrate` between two looks at the catalogue: what somebody changed beside the migrations is refused before, and so not taken for theirs after. A mark
 * stands as long as it runs: a migrator that was killed midway does not stand in the way of the next.
 */
async function withCatalogue(url, migrate) {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    await client.query('SELECT pg_advisory_lock($1)', [CATALOGUE_LOCK])
    const { rows: known } = await client.query(`SELECT FROM pg_class WHERE oid = to_regclass('public.catalogue_as_migrated')`)
    const stored = known.length ? (await client.query('SELECT thing, "is" FROM catalogue_as_migrated')).rows : []
    const differences = await changedSince(client, stored)
    if (differences.length && process.env.ACCEPT_CATALOGUE !== 'on') throw new PlainError(tellDifferences(differences))
    for (const difference of differences) say(`accepted: ${difference}`)
    if (known.length) await client.query(`INSERT INTO catalogue_as_migrated VALUES ($1, 'yes') ON CONFLICT DO NOTHING`, [MIGRATING])
    const answer = await migrate()
    // By itself every login may make temporary tables, which are found before ours by their names.
    const { rows } = await client.query('SELECT current_database() AS name')
    await client.query(`REVOKE TEMPORARY ON DATABASE ${client.escapeIdentifier(rows[0].name)} FROM PUBLIC`)
    await client.query('BEGIN')
    await client.query('DELETE FROM catalogue_as_migrated')
    await client.query(`INSERT INTO catalogue_as_migrated (thing, "is") ${CATALOGUE_QUERY}`)
    await client.query('INSERT INTO catalogue_as_migrated VALUES ($1, $2)', [FORMAT, CATALOGUE_FORMAT])
    await client.query('COMMIT')
    return answer
  } finally {
    await client.end() // ends the session, and with it the lock
  }
}

/** Applies what is missing as `url`'s role, which owns the database. Returns the names of the migrations that were applied. */
export function prepareDatabase(url) {
  return withCatalogue(url, async () => {
    const applied = await migrate(url).catch((error) => {
      throw new PlainError(
        `The database could not be brought to the present version; nothing of the failed step was kept. ${error.message ?? error}`,
      )
    })
    await installQueue(url)
    return applied
  })
}
