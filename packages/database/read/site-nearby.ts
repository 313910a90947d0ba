import { notFound } from '@almanac/runtime/errors'
import { inCompany, type Scope } from '../in-company.ts'

type Known = { id: string; label: string; latitude: number; longitude: number }

const MOST = 24

/** The yard and the nearest sites whose place is known; of a site without a place, those of its town first. */
export async function readSiteNearby(scope: Pick<Scope, 'companyId'>, siteId: string) {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const site = await tx.site.findFirst({
      where: { companyId, id: siteId, archivedAt: null },
      select: { town: true, latitude: true, longitude: true },
    })
    if (!site) throw notFound('site')
    const settings = await tx.companySettings.findFirst({ where: { companyId }, select: { yardLatitude: true, yardLongitude: true } })
    const yard =
      settings?.yardLatitude == null || settings.yardLongitude == null
        ? null
        : { latitude: settings.yardLatitude, longitude: settings.yardLongitude }
    // A degree east is shorter by the cosine of the latitude; near enough for an order.
    const found = await tx.$queryRaw<Known[]>`
      select id, label, latitude, longitude from site
      where company_id = ${companyId}::uuid and archived_at is null and id <> ${siteId}::uuid and latitude is not null and longitude is not null
      order by coalesce((latitude - ${site.latitude}::float8) ^ 2 + ((longitude - ${site.longitude}::float8) * cos(radians(latitude))) ^ 2, 0),
        (town is not distinct from ${site.town}::text) desc, id
      limit ${MOST}`
    return { yard, places: found.map(({ id, label, latitude, longitude }) => ({ id, label, place: { latitude, longitude } })) }
  })
}
