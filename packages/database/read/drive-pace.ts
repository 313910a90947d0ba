import { DRIVE_PACE_KEY, type DrivePace } from '@almanac/records/drive-pace'
import { inCompany, type Scope } from '../in-company.ts'

/** The pace of drives that the company's owner took over; null: usual speeds. */
export async function readDrivePace(scope: Pick<Scope, 'companyId'>): Promise<DrivePace | null> {
  return (await readDrivePaceRow(scope))?.pace ?? null
}

/** The same with the version that a screen saw; one that was given up has no pace, and its version goes on. Null where there never was one. */
export async function readDrivePaceRow(scope: Pick<Scope, 'companyId'>): Promise<{ version: number; pace: DrivePace | null } | null> {
  const { companyId } = scope
  const row = await inCompany(scope, (tx) => tx.firmFigure.findUnique({ where: { companyId_key: { companyId, key: DRIVE_PACE_KEY } } }))
  return row && { version: row.version, pace: row.archivedAt ? null : (row.value as unknown as DrivePace) }
}
