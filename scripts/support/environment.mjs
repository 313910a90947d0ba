// What web and worker are told through the environment: from the operator's own PostgreSQL, or from the embedded one.
import fs from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import { startPostgres } from '../postgres.mjs'
import { databaseUrls, setUpRoles } from '../set-up-roles.mjs'
import { randomSecret, writePrivate } from './cluster-secrets.mjs'
import { dataDir } from './paths.mjs'
import { PlainError } from './say.mjs'

/** The secret that signs sessions: made once, kept for its owner's eyes only, so that a restart signs nobody out. */
function authSecret() {
  if (process.env.AUTH_SECRET) return process.env.AUTH_SECRET
  const file = path.join(dataDir, 'secret')
  fs.mkdirSync(dataDir, { recursive: true })
  if (!fs.existsSync(file)) writePrivate(file, randomSecret() + randomSecret())
  return fs.readFileSync(file, 'utf8').trim()
}

/** The operator's own addresses, when DATABASE_URL is given; undefined means the embedded PostgreSQL. */
function ownUrls() {
  if (!process.env.DATABASE_URL) return undefined
  const names = ['DATABASE_URL', 'IDENTITY_DATABASE_URL', 'MIGRATION_DATABASE_URL']
  const missing = [...names, 'AUTH_SECRET'].filter((name) => !process.env[name])
  if (missing.length)
    throw new PlainError(
      `DATABASE_URL is given, so your own PostgreSQL is used, and ${missing.join(', ')} must be given too: see the README on using your own PostgreSQL.`,
    )
  return Object.fromEntries(names.map((name) => [name, process.env[name]]))
}

/** What the environment asks for, checked before anything is done: { port, host, own }. */
export function readSettings() {
  const port = Number(process.env.PORT ?? 3000)
  if (!Number.isInteger(port) || port < 1 || port > 65_535)
    throw new PlainError(`PORT must be a whole number from 1 to 65535; it is "${process.env.PORT}".`)
  return { port, host: process.env.HOST ?? '127.0.0.1', own: ownUrls() }
}

async function mustAnswer(urls) {
  for (const [name, connectionString] of Object.entries(urls)) {
    const client = new pg.Client({ connectionString, connectionTimeoutMillis: 10_000 })
    try {
      await client.connect()
    } catch (error) {
      throw new PlainError(`${name} does not lead to a database: ${error.message || error.code}.`)
    } finally {
      await client.end().catch(() => {})
    }
  }
}

/**
 * Starts or joins the embedded PostgreSQL unless the operator has their own.
 * Resolves to { embedded, urls, env, lookAfter, stop }: the three addresses, the whole environment of web and worker, what keeps the embedded server up (and
 * answers what lets it go again), and what ends it.
 */
export async function openEnvironment({ port, own }) {
  const common = { AUTH_SECRET: authSecret(), PORT: String(port), PUBLIC_URL: process.env.PUBLIC_URL ?? `http://localhost:${port}` }
  if (own) {
    await mustAnswer(own)
    return { embedded: false, urls: own, env: { ...own, ...common }, lookAfter: () => () => {}, stop: async () => {} }
  }
  const cluster = await startPostgres({ name: 'postgres' })
  try {
    await setUpRoles(cluster, 'almanac')
  } catch (error) {
    await cluster.stop()
    throw error
  }
  const urls = databaseUrls(cluster, 'almanac')
  return { embedded: true, urls, env: { ...urls, ...common }, lookAfter: cluster.lookAfter, stop: cluster.stop }
}
