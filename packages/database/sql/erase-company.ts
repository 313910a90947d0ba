import type { Tx } from '../client.ts'

/** Erases every row of the company in scope, its people's sign-in included, where its day has come by `at`; answers how many rows went. Throws where it has not. */
export async function eraseCompanyIn(tx: Tx, at: Date): Promise<number> {
  const [row] = await tx.$queryRaw<{ gone: bigint }[]>`select almanac_erase_company(${at}) as gone`
  return Number(row?.gone ?? 0)
}
