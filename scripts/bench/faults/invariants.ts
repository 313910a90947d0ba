import pg from 'pg'
import type { Done } from './work.ts'

const IMPORT_PATIENCE_MS = 60_000

/** What holds of every row, whatever broke: each query answers what breaks it, and has to answer nothing. */
const NOTHING: Record<string, string> = {
  'a bed in service twice in one tank': `select tank_id from bed where ended_latest is null and archived_at is null group by company_id, tank_id having count(*) > 1`,
  'a job with two open visits': `select job_id from visit where state in ('booked', 'under-way') group by company_id, job_id having count(*) > 1`,
  'a visit that was closed twice': `select entity_id from audit_entry where operation like 'jobs.%: closed out' group by entity_id having count(*) > 1`,
  'a closed visit without its time': `select id from visit where state = 'closed' and closed_at is null`,
  'a command without its answer': `select id from applied_command where answer is null`,
  'a task that was given up': `select id from queue.job where state = 'failed' and name <> 'nightly' and name not like '\\_\\_%'`,
  'rows of no company': `select id from site where company_id not in (select id from company)`,
}

/** What was lost of what was acknowledged, what was done twice, and what else does not hold: a sentence each; and how long the last imports took. */
export type Broken = { lost: string[]; twice: string[]; broken: string[]; importsS: number }

/** Waits until what was asked for is done, then looks for what was lost, done twice or left half. */
export async function findBroken(superUrl: string, done: Done): Promise<Broken> {
  const db = new pg.Client({ connectionString: superUrl })
  await db.connect()
  const rows = async <R extends pg.QueryResultRow>(sql: string, values: unknown[] = []) => (await db.query<R>(sql, values)).rows
  try {
    const batchIds = done.imports.filter((one) => one.acknowledged).map((one) => one.batchId)
    const begun = performance.now()
    while (performance.now() - begun < IMPORT_PATIENCE_MS) {
      if ((await rows(`select from import_batch where id = any($1) and state <> 'applied'`, [batchIds])).length === 0) break
      await new Promise((next) => setTimeout(next, 500))
    }
    const importsS = (performance.now() - begun) / 1000

    const [lost, twice, broken]: [string[], string[], string[]] = [[], [], []]
    const names = new Map(
      (
        await rows<{ name: string; n: number }>(
          `select name, count(*)::int as n from water_supply where name like 'Supply %' group by name`,
        )
      ).map(({ name, n }) => [name, n]),
    )
    for (const { name, acknowledged } of done.supplies) {
      const count = names.get(name) ?? 0
      if (acknowledged && count === 0) lost.push(`${name} was acknowledged, and is lost`)
      if (count > 1) twice.push(`${name} is there ${count} times`)
    }
    for (const { batchId, prefix, rows: wanted, acknowledged } of done.imports) {
      const [batch] = await rows<{ state: string; sites: number }>(
        `select b.state, (select count(*)::int from customer c where c.company_id = b.company_id and c.name like $2) as sites from import_batch b where b.id = $1`,
        [batchId, `Family ${prefix} %`],
      )
      if (acknowledged && batch?.state !== 'applied')
        lost.push(`import ${batchId} was acknowledged, and is ${batch?.state ?? 'lost'} after ${IMPORT_PATIENCE_MS / 1000} s`)
      if (batch && batch.sites !== (batch.state === 'applied' ? wanted : 0))
        broken.push(`import ${batchId} is ${batch.state}, with ${batch.sites} of ${wanted} customers`)
    }
    for (const visitId of done.closed)
      if ((await rows(`select from visit where id = $1 and state = 'closed'`, [visitId])).length !== 1)
        lost.push(`visit ${visitId} was closed out, and is not closed`)
    for (const planId of done.accepted)
      if ((await rows(`select from plan_proposal where id = $1 and state = 'accepted'`, [planId])).length !== 1)
        lost.push(`plan ${planId} was accepted, and is not`)
    for (const [what, sql] of Object.entries(NOTHING)) {
      const found = await rows(sql)
      if (found.length) (what.includes('twice') ? twice : broken).push(`${what}: ${found.length} times`)
    }
    return { lost, twice, broken, importsS }
  } finally {
    await db.end()
  }
}

/** What the worker is at, and for how many seconds the longest of these tasks has stood still at a worker that is no more. */
export async function tasksAtWork(superUrl: string): Promise<{ names: string[]; silentS: number; silent: string }> {
  const db = new pg.Client({ connectionString: superUrl, connectionTimeoutMillis: 3000 })
  db.on('error', () => {})
  try {
    await db.connect()
    const { rows } = await db.query<{ name: string; seconds: number | null }>(
      `select name, extract(epoch from now() - heartbeat_on)::float8 as seconds from queue.job where state = 'active' order by 2 desc nulls last`,
    )
    return { names: [...new Set(rows.map(({ name }) => name))], silentS: rows[0]?.seconds ?? 0, silent: rows[0]?.name ?? '' }
  } catch {
    return { names: [], silentS: 0, silent: '' } // it is away, which others notice
  } finally {
    await db.end().catch(() => {})
  }
}
