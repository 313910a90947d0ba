import { createHash } from 'node:crypto'
import { inCompany } from '@almanac/database/in-company'
import { readBedHistoryPage } from '@almanac/database/read/bed-records'
import type { BedRecord } from '@almanac/forecast/fit/bed-record'
import { bedRecord } from './bed-record.ts'

const PAGE = 1000

export type CompanyRecords = {
  records: BedRecord[]
  /** The bed of each record, in the same order. */
  bedIds: string[]
  /** The same for the same records, whatever the day. */
  dataHash: string
  /** Beds that have ended on record. */
  endedBeds: number
  /** Beds that were met only when they had failed. */
  metTooLate: number
}

/** All bed records of one company, read page by page in transactions of their own. */
export async function readCompanyRecords(companyId: string): Promise<CompanyRecords> {
  const hash = createHash('sha256')
  const all: CompanyRecords = { records: [], bedIds: [], dataHash: '', endedBeds: 0, metTooLate: 0 }
  let after: string | null = null
  do {
    const page = await inCompany({ companyId }, (tx) => readBedHistoryPage(tx, companyId, after, PAGE))
    for (const bed of page.beds) {
      if (bed.endedLatest !== null) all.endedBeds += 1
      const record = bedRecord(bed)
      if (record === null) {
        all.metTooLate += 1
        continue
      }
      hash.update(JSON.stringify(record))
      all.records.push(record)
      all.bedIds.push(bed.id)
    }
    after = page.lastId
  } while (after !== null)
  return { ...all, dataHash: hash.digest('hex') }
}
