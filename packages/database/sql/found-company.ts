import type { Tx } from '../client.ts'

/** Founds a company by a set-up link, at the identity login, which may add no company by itself. False where the link no longer works; then nothing was changed. */
export async function foundCompanyIn(tx: Tx, linkHash: string, ownerId: string, said: Record<string, unknown>): Promise<boolean> {
  const [row] = await tx.$queryRaw<{ founded: boolean }[]>`
    select almanac_found_company(${linkHash}, ${ownerId}::uuid, ${JSON.stringify(said)}::jsonb) as founded`
  return row?.founded ?? false
}
