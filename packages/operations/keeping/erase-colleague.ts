import type { EraseColleague, Erased } from '@almanac/contract/erase'
import { expectChanged } from '@almanac/database/changed-row'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { PATIENCE } from './erase-patience.ts'
import { eraseTraces } from './erase-traces.ts'

/** Who of those who sign in one of the day sheets is; null for nobody, and for one who is not of this company. */
export async function signInOfColleague(scope: Pick<Scope, 'companyId'>, colleagueId: string): Promise<string | null> {
  const { companyId } = scope
  const found = await inCompany(scope, (tx) =>
    tx.colleague.findFirst({ where: { companyId, id: colleagueId }, select: { personId: true } }),
  )
  return found?.personId ?? null
}

/** Parts an erased colleague from their sign-in, once that is forgotten. */
export async function partFromSignIn(scope: Pick<Scope, 'companyId'>, colleagueId: string): Promise<void> {
  const { companyId } = scope
  await inCompany(scope, (tx) =>
    tx.colleague.updateMany({ where: { companyId, id: colleagueId, erasedAt: { not: null } }, data: { personId: null } }),
  )
}

/**
 * Erases one of the firm's own people: name, home and what names them in any text. The days and visits they were on stay. `signIn` is how their sign-in, which is
 * identity's, names them: that goes by `forgetPerson` and `partFromSignIn`, after this.
 */
export async function eraseColleague(
  scope: Scope & { personId: string },
  input: EraseColleague,
  signIn: { name: string; email: string } | null,
): Promise<Erased> {
  const { colleagueId: id, version } = input
  return runCommand(
    scope,
    'keeping.erase-colleague',
    input,
    async (tx, command) => {
      const { companyId } = scope
      const colleague = await tx.colleague.findFirst({ where: { companyId, id, erasedAt: null } })
      if (!colleague) throw notFound('person')
      if (colleague.personId === scope.personId)
        throw new AppError('conflict', 'You can’t erase yourself. Nothing was erased; ask another owner.')
      const ahead = await tx.crewDayMember.count({ where: { companyId, colleagueId: id, crewDay: { endsAt: { gt: command.at } } } })
      if (ahead > 0)
        throw new AppError('conflict', 'They’re on day sheets still to come. Nothing was erased; take them off those sheets first.')
      const { count } = await tx.colleague.updateMany({
        where: { companyId, id, version },
        data: {
          ...{ name: 'Former colleague', homeLatitude: null, homeLongitude: null, startsAtHome: false, overtimeMinorPerHour: null },
          ...{ archivedAt: colleague.archivedAt ?? command.at, erasedAt: command.at, version: { increment: 1 } },
        },
      })
      await expectChanged(count, 'person', version, {}, async () => ({ version: colleague.version }))
      await tx.absence.updateMany({ where: { companyId, colleagueId: id }, data: { word: null, version: { increment: 1 } } })
      await tx.calendarFeed.updateMany({
        where: { companyId, colleagueId: id, endedAt: null },
        data: { endedAt: command.at, version: { increment: 1 } },
      })
      const names = [...new Set([colleague.name, ...(signIn ? [signIn.name] : [])])]
      const traces = { names, phones: [], emails: signIn ? [signIn.email] : [] }
      const places = await eraseTraces(tx, command, traces, { own: [id], around: [id] })
      await command.audit('erased', 'colleague', id, { places })
      await command.announce('colleague', id, version + 1)
      return { id, places }
    },
    PATIENCE,
  )
}
