import { AppError, notFound } from '@almanac/runtime/errors'

/**
 * Checks that an update with `where: { companyId, id, version }` touched its row. `count` is what updateMany answered; `current` reads the
 * row as it is now. A missing row is not found; another version is a 409 that carries the present values beside the ones sent.
 */
export async function expectChanged<R extends { version: number }>(
  count: number,
  what: string,
  seenVersion: number,
  sent: Record<string, unknown>,
  current: () => Promise<R | null>,
): Promise<void> {
  if (count === 1) return
  const row = await current()
  if (!row) throw notFound(what)
  throw new AppError(
    'version-conflict',
    `Someone changed this ${what} since you opened it. Yours was not saved; both versions are shown, choose what should stand.`,
    { what, seenVersion, currentVersion: row.version, current: row, sent },
  )
}
