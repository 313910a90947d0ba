import type { ChangeSite } from '@almanac/contract/site-commands'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { changesOf } from '../shared/changes-of.ts'
import { refreshSiteForecasts } from '../shared/refresh-site-forecasts.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { checkSupply } from './check-supply.ts'

const hoursOf = ({ weekdays, from, until }: NonNullable<ChangeSite['visitHours']>) => ({
  ...{ visitWeekdays: [...new Set(weekdays)].sort(), visitFrom: from, visitUntil: until },
})

/** Changes a site's own facts. Another water supply means other water on its beds, so they are forecast anew. */
export async function changeSite(scope: Scope & { personId: string }, input: ChangeSite): Promise<{ id: string; version: number }> {
  const { commandId: _, siteId, version, ...sent } = input
  return runCommand(scope, 'customers.change-site', input, async (tx, command) => {
    const { companyId } = scope
    const before = await tx.site.findFirst({ where: { companyId, id: siteId, archivedAt: null } })
    if (!before) throw notFound('site')
    if (sent.waterSupplyId) await checkSupply(tx, companyId, sent.waterSupplyId)
    const { count } = await tx.site.updateMany({
      where: { companyId, id: siteId, version },
      data: {
        label: sent.label,
        street: sent.street || null,
        town: sent.town || null,
        region: sent.region || null,
        postcode: sent.postcode || null,
        accessNotes: sent.accessNotes || null,
        notes: sent.notes || null,
        waterSupplyId: sent.waterSupplyId,
        ...(sent.place === undefined ? {} : { latitude: sent.place?.latitude ?? null, longitude: sent.place?.longitude ?? null }),
        ...(sent.visitHours === undefined ? {} : hoursOf(sent.visitHours)),
        version: { increment: 1 },
      },
    })
    await expectChanged(count, 'site', version, sent, async () => {
      const row = await tx.site.findFirst({ where: { companyId, id: siteId } })
      return (
        row && {
          version: row.version,
          label: row.label,
          street: row.street ?? '',
          town: row.town ?? '',
          region: row.region ?? '',
          postcode: row.postcode ?? '',
          accessNotes: row.accessNotes ?? '',
          notes: row.notes ?? '',
          waterSupplyId: row.waterSupplyId,
          visitHours: { weekdays: row.visitWeekdays, from: row.visitFrom, until: row.visitUntil },
          place: row.latitude === null || row.longitude === null ? null : { latitude: row.latitude, longitude: row.longitude },
        }
      )
    })
    await rewriteSiteTokens(tx, companyId, [siteId])
    const moved = before.waterSupplyId !== sent.waterSupplyId
    if (moved) await refreshSiteForecasts(tx, command, { siteId })
    const was = {
      ...before,
      visitHours: { weekdays: before.visitWeekdays, from: before.visitFrom, until: before.visitUntil },
      place: before.latitude === null || before.longitude === null ? null : { latitude: before.latitude, longitude: before.longitude },
    }
    const personal = ['label', 'street', 'town', 'region', 'postcode', 'accessNotes', 'notes', 'place'] as const
    await command.audit('changed', 'site', siteId, changesOf(was, sent, personal))
    await command.announce('site', siteId, version + 1)
    return { id: siteId, version: version + 1 }
  })
}
