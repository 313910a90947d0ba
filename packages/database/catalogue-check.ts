import { AppError } from '@almanac/runtime/errors'
import { log } from '@almanac/runtime/log'
import {
  CATALOGUE_FORMAT,
  CATALOGUE_QUERY,
  type CatalogueLine,
  catalogueDifferences,
  FORMAT,
  MIGRATING,
  tellDifferences,
} from './catalogue.ts'
import { appClient } from './client.ts'

const TABLE = 'catalogue_as_migrated'

/**
 * Refuses to go on with a database whose catalogue is not the one that the migrator stored when it had finished (see scripts/prepare-database.mjs). With
 * `unmigrated`, a database that has none yet, or is being migrated, is let through: for the command that migrates next.
 */
export async function refuseChangedCatalogue({ unmigrated = false } = {}): Promise<void> {
  const [table] = await appClient().$queryRawUnsafe<{ known: boolean }[]>(`select to_regclass('public.${TABLE}') is not null as known`)
  const stored = table?.known ? await appClient().$queryRawUnsafe<CatalogueLine[]>(`select thing, "is" from public.${TABLE}`) : []
  const format = stored.find((line) => line.thing === FORMAT)?.is
  if (format === undefined) {
    if (unmigrated) return
    throw new AppError(
      'misconfigured',
      'The database is not at the version of this release: npm start brings it there. The app does not start.',
    )
  }
  if (format !== CATALOGUE_FORMAT) return log().warn('the catalogue of this database was stored by another release, and is not compared')
  const present = await appClient().$queryRawUnsafe<CatalogueLine[]>(CATALOGUE_QUERY)
  const differences = catalogueDifferences(stored, present)
  if (unmigrated && stored.some((line) => line.thing === MIGRATING)) return
  if (differences.length) throw new AppError('misconfigured', tellDifferences(differences))
}
