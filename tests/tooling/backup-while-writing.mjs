// Run by backup.test.ts: a cluster that is written to all the time is backed up, the copy is started, and what it holds is printed.
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import pg from 'pg'
import { backUp } from '../../scripts/backup.mjs'
import { startPostgres } from '../../scripts/postgres.mjs'
import { putInPlace } from '../../scripts/support/backup-files.mjs'
import { clusterPlace } from '../../scripts/support/cluster-place.mjs'

const { home, as } = await clusterPlace()
const names = { from: `backup-test-${process.pid}`, to: `restore-test-${process.pid}` }
const open = async (cluster) => {
  const client = new pg.Client({ connectionString: cluster.url('postgres', 'postgres') })
  await client.connect()
  return client
}
const remove = () => {
  for (const file of fs.readdirSync(home))
    if (Object.values(names).some((name) => file.startsWith(name))) fs.rmSync(path.join(home, file), { recursive: true, force: true })
}

/** Each transaction writes the same number to two tables, and moves money between two rows of a third: a torn copy would not add up. */
async function writeUntil(cluster, done) {
  const client = await open(cluster)
  let n = 0
  while (!done.now) {
    n++
    await client.query('BEGIN')
    await client.query('INSERT INTO one SELECT $1::int, repeat(md5($1::int::text), 20) FROM generate_series(1, 50)', [n])
    await client.query('UPDATE purse SET held = held + CASE id WHEN 1 THEN -1 ELSE 1 END')
    await client.query('INSERT INTO two SELECT $1::int FROM generate_series(1, 50)', [n])
    await client.query('COMMIT')
  }
  await client.end()
  return n
}

const running = []
const start = async (name) => {
  const cluster = await startPostgres({ name, volatile: true })
  running.push(cluster)
  return cluster
}

try {
  const cluster = await start(names.from)
  const client = await open(cluster)
  await client.query(`CREATE TABLE one (n int, filler text); CREATE INDEX ON one (n); CREATE TABLE two (n int);
    CREATE TABLE purse (id int PRIMARY KEY, held int); INSERT INTO purse VALUES (1, 1000), (2, 0)`)
  const done = { now: false }
  const writing = writeUntil(cluster, done)
  await sleep(700)
  const { rows: before } = await client.query('SELECT max(n) AS n FROM one')
  const copy = path.join(home, `${names.to}.copy`)
  await backUp(client, cluster.data, copy)
  const { rows: after } = await client.query('SELECT max(n) AS n FROM one')
  await sleep(300)
  done.now = true
  const written = await writing
  await client.end()

  putInPlace(copy, path.join(home, names.to), as)
  fs.copyFileSync(path.join(home, `${names.from}.passwords.json`), path.join(home, `${names.to}.passwords.json`))
  const restored = await start(names.to)
  const reader = await open(restored)
  const ask = async (sql) => (await reader.query(sql)).rows[0]
  const bySeqScan = await ask('SELECT count(*)::int AS rows, count(DISTINCT n)::int AS different, max(n) AS last FROM one')
  await reader.query('SET enable_seqscan = off; SET enable_bitmapscan = off')
  const byIndex = await ask('SELECT count(*)::int AS rows FROM one WHERE n > 0')
  const two = await ask('SELECT count(*)::int AS rows, max(n) AS last FROM two')
  const purse = await ask('SELECT sum(held)::int AS total, min(held) FILTER (WHERE id = 1) AS first FROM purse')
  await reader.end()
  console.log(JSON.stringify({ atStart: before[0].n, atEnd: after[0].n, written, one: bySeqScan, byIndex: byIndex.rows, two, purse }))
} finally {
  for (const cluster of running) await cluster.stop()
  remove()
}
process.exit()
