import 'server-only'
import { type RecordKind, recordExists } from '@almanac/database/read/record-exists'
import { notFound } from 'next/navigation'
import { signedIn } from './signed-in.ts'

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** The id in a page's address; answers 404 where the signed-in person's company has no such record. */
export async function recordId(kind: RecordKind, id: string): Promise<string> {
  const { company } = await signedIn()
  if (!UUID.test(id) || !(await recordExists({ companyId: company.id }, kind, id))) notFound()
  return id
}
