import type { EraseColleague, Erased, ErasedCounts } from '@almanac/contract/erase'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { PATIENCE } from './erase-patience.ts'
import { eraseTraces } from './erase-traces.ts'
import { tryOut } from './try-out.ts'

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

type SignIn = { name: string; email: string } | null

/** Erases a colleague in a transaction. `version`: null where it is only tried out. Answers what went. */
async function colleagueGoes(tx: Tx, command: Command, id: string, version: number | null, signIn: SignIn): Promise<ErasedCounts> {
  const { companyId, personId, at } = command
  const colleague = await tx.colleague.findFirst({ where: { companyId, id, erasedAt: null } })
  if (!colleague) throw notFound('person')
  if (colleague.personId === personId) throw new AppError('conflict', 'You can’t erase yourself. Nothing was erased; ask another owner.')
  const ahead = await tx.crewDayMember.count({ where: { companyId, colleagueId: id, crewDay: { endsAt: { gt: at } } } })
  if (ahead > 0)
    throw new AppError('conflict', 'They’re on day sheets still to come. Nothing was erased; take them off those sheets first.')
  const { count } = await tx.colleague.updateMany({
    where: { companyId, id, version: version ?? colleague.version },
    data: {
      ...{ name: 'Former colleague', homeLatitude: null, homeLongitude: null, startsAtHome: false, overtimeMinorPerHour: null },
      ...{ archivedAt: colleague.archivedAt ?? at, erasedAt: at, version: { increment: 1 } },
    },
  })
  await expectChanged(count, 'person', version ?? 0, {}, async () => ({ version: colleague.version }))
  await tx.absence.updateMany({ where: { companyId, colleagueId: id }, data: { word: null, version: { increment: 1 } } })
  await tx.calendarFeed.updateMany({
    where: { companyId, colleagueId: id, endedAt: null },
    data: { endedAt: at, version: { increment: 1 } },
  })
  const names = [...new Set([colleague.name, ...(signIn ? [signIn.name] : [])])]
  const traces = { names, phones: [], emails: signIn ? [signIn.email] : [] }
  const { places, exports } = await eraseTraces(tx, command, traces, { own: [id], around: [id] })
  return { contacts: 0, messages: 0, listLines: 0, pictures: 0, exports, places }
}

/** What erasing one of the firm's own people would take; nothing is changed. */
export const previewEraseColleague = (
  scope: Scope & { personId: string },
  { colleagueId }: { colleagueId: string },
  signIn: SignIn,
): Promise<ErasedCounts> => tryOut(scope, 'keeping.erase-colleague', (tx, command) => colleagueGoes(tx, command, colleagueId, null, signIn))

/**
 * Erases one of the firm's own people: name, home and what names them in any text. The days and visits they were on stay. `signIn` is how their sign-in, which is
 * identity's, names them: that goes by `forgetPerson` and `partFromSignIn`, after this.
 */
export async function eraseColleague(scope: Scope & { personId: string }, input: EraseColleague, signIn: SignIn): Promise<Erased> {
  const { colleagueId: id, version } = input
  const work = async (tx: Tx, command: Command) => {
    const { places } = await colleagueGoes(tx, command, id, version, signIn)
    await command.audit('erased', 'colleague', id, { places })
    await command.announce('colleague', id, version + 1)
    return { id, places }
  }
  return runCommand(scope, 'keeping.erase-colleague', input, work, PATIENCE)
}
