import type { ChangeBedFacts } from '@almanac/contract/beds'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { changesOf } from '../shared/changes-of.ts'
import { companyFacts } from '../shared/company-facts.ts'
import { sourceWords } from '../shared/read-typed-facts.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { bedChanges } from './bed-changes.ts'
import { changeTankSize } from './change-tank-size.ts'
import { checkFacts } from './check-facts.ts'
import { presentFacts } from './present-facts.ts'
import { setBackwash } from './set-backwash.ts'

/**
 * Changes what is known of a bed, its tank and its valve. Each fact given keeps where it came from; one left out stays as it is. The forecast is asked for
 * anew in the same transaction. A fact changed by someone else meanwhile answers 409 with both values.
 */
export async function changeBedFacts(
  scope: Scope & { personId: string },
  input: ChangeBedFacts,
): Promise<{ bedId: string; version: number }> {
  const { bedId, version, facts } = input
  return runCommand(scope, 'softeners.change-bed-facts', input, async (tx, command) => {
    const { companyId } = scope
    const bed = await tx.bed.findFirst({
      where: { companyId, id: bedId, archivedAt: null },
      include: { tank: { include: { softener: { select: { id: true, siteId: true } } } } },
    })
    if (!bed) throw notFound('bed')
    const company = await companyFacts(tx, companyId)
    checkFacts(bed.tank, facts, company, input.why)
    const from = sourceWords(input.source, company.today)
    const current = (what: number) => async () => ({ version: what, ...(await presentFacts(tx, companyId, bedId, facts)) })
    const was = await presentFacts(tx, companyId, bedId, facts)
    const { count } = await tx.bed.updateMany({
      where: { companyId, id: bedId, version },
      data: { ...bedChanges(bed, facts, { company, from, why: input.why }), version: { increment: 1 } },
    })
    await expectChanged(count, 'bed', version, facts, current(bed.version))
    if (facts.tankSize !== undefined)
      await changeTankSize(tx, { bed, tankSize: facts.tankSize, version: input.tankVersion, from, facts, current })
    if (facts.backwash !== undefined) await setBackwash(tx, { bed, backwash: facts.backwash, version: input.valveVersion, facts, current })
    if (facts.tankSize !== undefined && bed.tank.softener) await rewriteSiteTokens(tx, companyId, [bed.tank.softener.siteId])
    await command.audit('facts changed', 'bed', bedId, { ...changesOf(was, facts), source: input.source })
    await command.announce('bed', bedId, version + 1)
    await command.enqueue('forecast-beds', { bedIds: [bedId], cause: 'edit' })
    return { bedId, version: version + 1 }
  })
}
