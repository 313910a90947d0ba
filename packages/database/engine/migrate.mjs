// `prisma migrate deploy` without the CLI (1 s instead of 4): same engine, same _prisma_migrations table, same checksums.
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import { createSchemaEngine } from './wasm.mjs'

const migrationsDir = path.resolve(import.meta.dirname, '../../../prisma/migrations')
const LOCK = 7_261_002 // one migrator at a time; any number that no other part of the project uses

// A migration waits only so long for a lock on a table that the running app uses, rather than queueing every query behind it.
// And the server looks every second whether the migrator is still there: a killed one's migration does not go on without it.
const session = '-c lock_timeout=15s -c client_connection_check_interval=1s'

// Both lie in the migration's own transaction. Whoever gets the lock knows that no migration is under way any more; a row without an end
// then means that nothing of it was applied.
const FILE_LOCK = 7_261_004
const beforeScript = `SELECT pg_advisory_xact_lock(${FILE_LOCK});`
const afterScript = ';UPDATE "_prisma_migrations" SET finished_at = now() WHERE finished_at IS NULL AND rolled_back_at IS NULL'

/** The migrations folder in the shape that the engine takes. */
function migrationsList(dir) {
  const read = (...parts) => readFileSync(path.join(dir, ...parts), 'utf8')
  const names = readdirSync(dir, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
  return {
    baseDir: dir,
    shadowDbInitScript: '',
    lockfile: { path: 'migration_lock.toml', content: read('migration_lock.toml') },
    migrationDirectories: names.map((name) => ({
      path: name,
      migrationFile: { path: 'migration.sql', content: { tag: 'ok', value: read(name, 'migration.sql') } },
    })),
  }
}

/** Sets aside what a killed or failed migrator left open: each file runs in one transaction, so none of it was applied. */
async function forgetUnfinished(client) {
  const { rows } = await client.query(`SELECT to_regclass('"_prisma_migrations"') IS NOT NULL AS known`)
  if (!rows[0].known) return
  await client.query(`
    SELECT pg_advisory_xact_lock(${FILE_LOCK});
    UPDATE "_prisma_migrations" SET rolled_back_at = now() WHERE finished_at IS NULL AND rolled_back_at IS NULL`)
}

/**
 * Applies the migrations that `url`'s database lacks, as the role in `url`; one migrator at a time, others wait and find nothing to do.
 * @param {string} url address of an existing database, as the role that owns it
 * @param {string} [dir] the migrations folder
 * @returns {Promise<string[]>} the names of the migrations that were applied
 */
export async function migrate(url, dir = migrationsDir) {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    await client.query('SELECT pg_advisory_lock($1)', [LOCK])
    await forgetUnfinished(client)
    const { engine, close } = await createSchemaEngine(url, { session, beforeScript, afterScript })
    try {
      const { appliedMigrationNames } = await engine.applyMigrations({
        filters: { externalTables: [], externalEnums: [] },
        migrationsList: migrationsList(dir),
      })
      return appliedMigrationNames
    } finally {
      await close()
    }
  } finally {
    await client.end() // ends the session, and with it the lock
  }
}
