import fs from 'node:fs/promises'
import { inCompany } from '@almanac/database/in-company'
import { eraseCompanyIn } from '@almanac/database/sql/erase-company'
import { now } from '@almanac/runtime/clock'
import { archiveFolder } from './export-place.ts'

/** A large company has a million rows. */
const PATIENCE = { timeoutMs: 840_000 }

/** Whether a company was closed and its day has come; `isClosing`: whether it is on its way there. */
export async function closingOf(companyId: string): Promise<{ isClosing: boolean; isDue: boolean }> {
  const company = await inCompany({ companyId }, (tx) => tx.company.findUnique({ where: { id: companyId }, select: { closesAt: true } }))
  const closesAt = company?.closesAt ?? null
  return { isClosing: closesAt !== null, isDue: closesAt !== null && closesAt <= now() }
}

/** Erases every row of a company whose day has come, and its archives. Its pictures go before: what they are called stands in its rows. */
export async function eraseCompany(companyId: string): Promise<void> {
  await fs.rm(archiveFolder(companyId), { recursive: true, force: true })
  await inCompany({ companyId }, (tx) => eraseCompanyIn(tx, now()), PATIENCE)
}
