import { setImmediate } from 'node:timers/promises'
import type { ImportRowView } from '@almanac/contract/imports'
import type { Scope } from '@almanac/database/in-company'
import { inCompany } from '@almanac/database/in-company'
import { readImportRows } from '@almanac/database/read/import-batches'
import type { DayReading, ImportedRecord } from '@almanac/service-rules/import/import-types'
import { readRow } from '@almanac/service-rules/import/read-row'
import { type DayDisplay, formatDays } from '@almanac/units/format-day'
import { type NumberDisplay, showWhole } from '@almanac/units/format-number'
import { companyFacts } from '../shared/company-facts.ts'
import { mappingOf, type StoredMapping } from './batch-mapping.ts'
import { changesOf, suppliesIn } from './change-words.ts'
import type { LedgerEntry } from './ledger.ts'
import type { CellProblem } from './plan-types.ts'

const joined = (...parts: (string | null | undefined)[]) => parts.filter(Boolean).join(', ')

/** A written date as it is understood: one day, or the stretch it may lie in. */
const dayWords = (day: DayReading | null, display: DayDisplay): string => (day ? formatDays(day.earliestDay, day.latestDay, display) : '')

function tankWords({ softener, bed }: ImportedRecord, display: NumberDisplay): string {
  const { tank, tankCount } = softener
  if (!tank) return ''
  const size = tank.diameterIn
    ? `${tank.diameterIn} × ${tank.heightIn ?? '?'} in`
    : tank.nominalGrains
      ? `${showWhole(tank.nominalGrains, display)} grain`
      : ''
  const volume = bed.resinVolume?.resinVolumeFt3 ?? tank.resinVolumeFt3
  return joined(`${tankCount > 1 ? `${tankCount} × ` : ''}${size}`, volume ? `${Number(volume.toFixed(2))} ft³ resin` : null)
}

/** How one row will be understood, in words to read across. */
function understood(record: ImportedRecord, display: DayDisplay): NonNullable<ImportRowView['understood']> {
  const { hardness, iron, supplyName } = record.water
  return {
    customer: joined(record.customerName, record.referenceNumber ? `no. ${record.referenceNumber}` : null),
    site: joined(record.site.street, record.site.town, record.site.postcode),
    tank: tankWords(record, display),
    began: dayWords(record.bed.began, display),
    lastSeen: dayWords(record.bed.lastSeen, display),
    water: joined(
      hardness ? `${Number(hardness.hardnessGpg.toPrecision(3))} gpg` : null,
      iron ? `${iron.atMost ? 'at most ' : ''}${Number(iron.mgL.toPrecision(3))} mg/L iron` : null,
      supplyName,
    ),
    contact: joined(record.contact.phone, ...record.contact.otherPhones, record.contact.email),
  }
}

/** Rows of an import as they will be understood by the present choices, with problems and notes. */
export async function showRows(
  scope: Pick<Scope, 'companyId'>,
  query: { batchId: string; only: 'all' | 'problem' | 'noted' | 'changed'; limit: number; cursor?: string },
): Promise<{ rows: ImportRowView[]; nextCursor: string | null }> {
  const page = await readImportRows(scope, query)
  const ledgers = page.rows.map(({ before }) => (Array.isArray(before) ? (before as unknown as LedgerEntry[]) : []))
  const { display, supplies } = await inCompany(scope, async (tx) => {
    const where = { companyId: scope.companyId, id: { in: ledgers.flatMap(suppliesIn) } }
    const found = await tx.waterSupply.findMany({ where, select: { id: true, name: true } })
    return { display: await companyFacts(tx, scope.companyId), supplies: new Map(found.map((one) => [one.id, one.name])) }
  })
  const stored = page.mapping as unknown as StoredMapping
  const mapping = mappingOf(page.header, stored.columns)
  const { hardnessBySupply } = stored
  const rows: ImportRowView[] = []
  for (const [at, row] of page.rows.entries()) {
    // The costliest row an upload may hold takes some milliseconds; others get their turn between two.
    await setImmediate()
    const reading = readRow(row.cells, mapping, { today: display.today, display, hardnessBySupply })
    rows.push({
      id: row.id,
      line: row.line,
      status: row.status as ImportRowView['status'],
      siteId: row.siteId,
      // Those of an older release were all of rows left out.
      problems: (row.problems as unknown as CellProblem[]).map(({ kind = 'left-out', column, value, reason }) => ({
        kind,
        column,
        value,
        reason,
      })),
      notes: row.notes as string[],
      changes: changesOf(ledgers[at] ?? [], { display, supplyName: (id) => supplies.get(id) }),
      understood: reading.ok ? understood(reading.record, display) : null,
    })
  }
  return { rows, nextCursor: page.nextCursor }
}
