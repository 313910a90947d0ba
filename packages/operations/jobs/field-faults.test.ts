import { closeClients } from '@almanac/database/client'
import { setClock } from '@almanac/runtime/clock'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { fieldFaultRun } from '../../../tests/support/field-faults.ts'
import { DAY } from '../../../tests/support/records.ts'
import { inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'

const RUNS = Number(process.env.FIELD_RUNS ?? 30)
const first = Number(process.env.FIELD_SEED ?? 20_261_130)
console.info(`field faults: seeds ${first} to ${first + RUNS - 1} (set FIELD_SEED and FIELD_RUNS to change them)`)
let db: pg.Client

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(`${DAY}T20:00:00Z`))
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

test(`${RUNS} runs of lost requests and answers, duplicates, kills and a dispatcher: nothing lost, nothing twice, each refusal seen`, async () => {
  const firm = await makeFirmRecords(db)
  const wrong: string[] = []
  for (let run = 0; run < RUNS; run++) wrong.push(...(await fieldFaultRun(firm, first + run)))
  expect(wrong).toEqual([])
})
