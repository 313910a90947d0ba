import { closeClients } from '@almanac/database/client'
import { setClock } from '@almanac/runtime/clock'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import pg from 'pg'
import { fieldFaultRun } from '../../../tests/support/field-faults.ts'
import { DAY } from '../../../tests/support/records.ts'
import { makeFirmRecords } from '../../../tests/support/two-firms.ts'

type Asked = { runs: number; seed: number; superUrl: string; later: (close: () => Promise<unknown>) => void }

/** Runs the seeds one after the other in a firm of their own; says how many agreed with the model and which did not. */
export async function runFieldFaults({ runs, seed, superUrl, later }: Asked, say: (line: string) => void) {
  const db = new pg.Client({ connectionString: superUrl })
  await db.connect()
  for (const close of [() => db.end(), closeClients, closeTaskQueue]) later(close)
  setClock(() => new Date(`${DAY}T20:00:00Z`))
  const firm = await makeFirmRecords(db)
  const wrong: string[] = []
  let apart = 0
  const begun = performance.now()
  for (let run = 0; run < runs; run++) {
    const found = await fieldFaultRun(firm, seed + run)
    if (found.length > 0) apart++
    wrong.push(...found)
    if ((run + 1) % 100 === 0) say(`${run + 1} runs, ${apart} apart from the model`)
  }
  for (const sentence of wrong) say(sentence)
  const { rows } = await db.query<{ commands: number; aside: number }>(
    `select (select count(*)::int from applied_command where company_id = $1 and queue_id is not null) as commands,
       (select count(*)::int from set_aside where company_id = $1) as aside`,
    [firm.companyId],
  )
  const seconds = Math.round((performance.now() - begun) / 1000)
  return { runs, seed, apart, ...rows[0], seconds }
}
