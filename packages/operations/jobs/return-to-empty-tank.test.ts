import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readBedPlan, readPaperPlan } from '@almanac/database/read/bed-plan'
import { readVisit } from '@almanac/database/read/visit-page'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { readClosed, rebedRecord, ticked } from '../../../tests/support/close-out.ts'
import { DAY } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { closeOutVisit } from './close-out-visit.ts'

let db: pg.Client
let firm: FirmRecords

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(`${DAY}T20:00:00Z`))
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

const answered = (stepId: string, note: string) => ({ stepId, confirmed: false, note })

/** The first visit: the bed is out, and the neck is found to be worn. */
async function madeSafe(): Promise<void> {
  const answers = [
    answered('old-tube-length-in', '43 1/4 in'),
    answered('gravel-found', 'mixed'),
    answered('tank-condition', 'thread'),
    ...ticked('bypass-proven', 'pressure-zero', 'left-in-bypass', 'customer-told'),
  ]
  const without = { measurements: [], partsUsed: [], newBed: null }
  const oldBed = { takenOut: true, endCause: 'worn' as const, evidence: 'soft beads' }
  const record = rebedRecord(firm, { outcome: 'made-safe', ...without, oldBed, checks: answers, reason: 'neck thread worn' })
  await closeOutVisit(firm, { commandId: newId(), record })
}

/** Another visit of the same job, booked as the first one was. */
const bookedAgain = () =>
  inCompany(firm, async (tx) => {
    const {
      id: _,
      outcome: __,
      closeOut: ___,
      closedAt: ____,
      closedBy: _____,
      ...first
    } = await tx.visit.findFirstOrThrow({
      where: { id: firm.rebedVisitId },
    })
    const id = newId()
    await tx.visit.create({ data: { ...first, id, state: 'booked', notes: null } })
    await tx.job.updateMany({ where: { id: firm.rebedJobId }, data: { state: 'booked' } })
    return id
  })

const page = (visitId: string) => readVisit(firm, visitId)

test('made safe with the bed out: the next visit begins with an empty tank and the first one’s findings, and ends no bed', async () => {
  expect((await page(firm.rebedVisitId)).emptied).toBeNull()
  await madeSafe()
  const again = await bookedAgain()
  const { emptied, bed } = await page(again)
  expect(emptied).toEqual({ day: DAY, found: 'neck thread worn', tubeIn: 43.25, gravel: 'mixed', condition: 'thread' })
  expect(bed?.tubeCutIn).toBe(43.25)
  // Its plan on paper is one of an empty tank; which resin and whether to rebed at all is asked of beds in service alone.
  expect(await readPaperPlan(firm, firm.rebedBedId)).toMatchObject({ emptied, plan: { bed: { bedId: firm.rebedBedId, tubeCutIn: 43.25 } } })
  await expect(readBedPlan(firm, firm.rebedBedId)).rejects.toMatchObject({ code: 'not-found' })

  const record = rebedRecord(firm, { visitId: again, oldBed: null })
  expect(await closeOutVisit(firm, { commandId: newId(), record })).toMatchObject({ jobState: 'closed', endedBedId: null })
  const { beds } = await readClosed(firm)
  expect(beds.map((one) => one.endedVisitId).sort()).toEqual([firm.rebedVisitId, null].sort())
  expect((await page(again)).emptied).toBeNull()
})

test('a bed that is still in its tank has to be taken out', async () => {
  const record = rebedRecord(firm, { oldBed: null })
  await expect(closeOutVisit(firm, { commandId: newId(), record })).rejects.toMatchObject({ code: 'invalid' })
})
