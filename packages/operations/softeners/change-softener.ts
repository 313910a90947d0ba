import type { ChangeSoftener } from '@almanac/contract/site-commands'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { changesOf } from '../shared/changes-of.ts'
import { checkAmounts } from '../shared/check-amounts.ts'
import { refreshSiteForecasts } from '../shared/refresh-site-forecasts.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { setValveCard } from './set-valve-card.ts'

/** Changes a softener's own facts. More people or another arrangement means other throughput, so its beds are forecast anew. */
export async function changeSoftener(scope: Scope & { personId: string }, input: ChangeSoftener): Promise<{ id: string; version: number }> {
  const { commandId: _, softenerId, version, valveCardId, why, ...sent } = input
  checkAmounts(
    { peopleServed: sent.peopleServed === null ? null : { kind: 'people', value: sent.peopleServed, unit: 'people' } },
    why ? { peopleServed: why } : undefined,
  )
  return runCommand(scope, 'softeners.change-softener', input, async (tx, command) => {
    const { companyId } = scope
    const before = await tx.softener.findFirst({ where: { companyId, id: softenerId, archivedAt: null } })
    if (!before) throw notFound('softener')
    const { count } = await tx.softener.updateMany({
      where: { companyId, id: softenerId, version },
      data: {
        label: sent.label,
        location: sent.location || null,
        arrangement: sent.arrangement,
        peopleServed: sent.peopleServed,
        notes: sent.notes || null,
        version: { increment: 1 },
      },
    })
    await expectChanged(count, 'softener', version, sent, async () => {
      const row = await tx.softener.findFirst({ where: { companyId, id: softenerId } })
      return (
        row && {
          version: row.version,
          label: row.label,
          location: row.location ?? '',
          arrangement: row.arrangement,
          peopleServed: row.peopleServed,
          notes: row.notes ?? '',
        }
      )
    })
    const valve = await tx.valve.findFirst({ where: { companyId, softenerId, archivedAt: null }, orderBy: { id: 'asc' } })
    const cardBefore = valve?.cardId ?? null
    if (valveCardId !== undefined) await setValveCard(tx, { companyId, softenerId, cardId: valveCardId })
    await rewriteSiteTokens(tx, companyId, [before.siteId])
    if (before.peopleServed !== sent.peopleServed || before.arrangement !== sent.arrangement)
      await refreshSiteForecasts(tx, command, { softenerId })
    await command.audit('changed', 'softener', softenerId, {
      ...changesOf({ ...before, valveCardId: cardBefore }, { ...sent, valveCardId }, ['label', 'location', 'notes']),
      why,
    })
    await command.announce('softener', softenerId, version + 1)
    return { id: softenerId, version: version + 1 }
  })
}
