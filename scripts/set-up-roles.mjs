// The embedded cluster's roles and database. The same roles.sql serves operators of their own PostgreSQL (`run.mjs roles-sql`).
import fs from 'node:fs'
import path from 'node:path'
import pg from 'pg'

const sql = fs.readFileSync(path.join(import.meta.dirname, 'roles.sql'), 'utf8')
const LOCK = 7_261_001 // any number that no other part of the project uses

/** Makes roles, their passwords and `database` (owned by almanac_owner) when they are missing; safe when two do it at once. */
export async function setUpRoles(cluster, database) {
  const client = new pg.Client({ connectionString: cluster.url('postgres', 'postgres') })
  await client.connect()
  try {
    await client.query('SELECT pg_advisory_lock($1)', [LOCK])
    await client.query(sql)
    for (const login of ['almanac_owner', 'almanac_app_login', 'almanac_identity_login'])
      await client.query(`ALTER ROLE ${login} PASSWORD ${client.escapeLiteral(cluster.passwords[login])}`)
    // Only here: `prisma migrate dev` makes a database to compare with, and throws it away.
    await client.query('ALTER ROLE almanac_owner CREATEDB')
    const { rowCount } = await client.query('SELECT FROM pg_database WHERE datname = $1', [database])
    if (!rowCount) await client.query(`CREATE DATABASE ${client.escapeIdentifier(database)} OWNER almanac_owner`)
  } finally {
    await client.end() // ends the session, and with it the lock
  }
}

/** The addresses of `database` for the three parts of the app, by the names of the environment variables. */
export const databaseUrls = (cluster, database) => ({
  MIGRATION_DATABASE_URL: cluster.url('almanac_owner', database),
  DATABASE_URL: cluster.url('almanac_app_login', database),
  IDENTITY_DATABASE_URL: cluster.url('almanac_identity_login', database),
})
