import type { BeginFeed, EndFeed } from '@almanac/contract/windows'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

type Self = Scope & { personId: string }

const self = (scope: Self) => ({ companyId: scope.companyId, personId: scope.personId, archivedAt: null })

/** Gives the caller a calendar address of their own visits, or of all day sheets. */
export async function beginFeed(scope: Self, input: BeginFeed, of: 'own' | 'office') {
  return runCommand(scope, of === 'own' ? 'jobs.begin-feed' : 'jobs.begin-office-feed', input, async (tx, command) => {
    const colleague = await tx.colleague.findFirst({ where: self(scope), select: { id: true } })
    if (of === 'own' && !colleague)
      throw new AppError('conflict', 'You’re not on any day sheets in this company, so there’s no calendar for you.')
    const feedId = newId()
    const whose = of === 'own' ? { colleagueId: colleague?.id } : { personId: scope.personId }
    const data = { companyId: scope.companyId, id: feedId, ...whose, createdAt: command.at }
    await tx.calendarFeed.create({ data })
    await command.audit('begun', 'calendar-feed', feedId)
    await command.announce('calendar-feed', feedId, 1)
    return { feedId }
  })
}

/** Ends one of the caller's calendar addresses: whoever holds the link sees nothing any more. */
export async function endFeed(scope: Self, input: EndFeed) {
  return runCommand(scope, 'jobs.end-feed', input, async (tx, command) => {
    const { companyId } = scope
    const where = { companyId, id: input.feedId, OR: [{ colleague: self(scope) }, { personId: scope.personId }] }
    const feed = await tx.calendarFeed.findFirst({ where, select: { id: true, version: true } })
    if (!feed) throw notFound('calendar')
    const { count } = await tx.calendarFeed.updateMany({
      where: { companyId, id: feed.id, version: input.version, endedAt: null },
      data: { endedAt: command.at, version: { increment: 1 } },
    })
    await expectChanged(count, 'calendar', input.version, {}, async () => feed)
    await command.audit('ended', 'calendar-feed', feed.id)
    await command.announce('calendar-feed', feed.id, input.version + 1)
    return { feedId: feed.id, version: input.version + 1 }
  })
}
