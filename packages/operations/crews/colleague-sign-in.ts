import { inCompany, type Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

/** Refuses to invite somebody as one of the day sheets who is not there, has left, or signs in already. */
export async function colleagueToInvite(scope: Pick<Scope, 'companyId'>, colleagueId: string): Promise<void> {
  const row = await inCompany(scope, (tx) =>
    tx.colleague.findFirst({
      where: { companyId: scope.companyId, id: colleagueId, archivedAt: null },
      select: { personId: true, name: true },
    }),
  )
  if (!row) throw notFound('person')
  if (row.personId) throw new AppError('conflict', `${row.name} signs in already. Nobody was invited.`)
}

/**
 * Says that one of the day sheets is whoever has just joined; nothing where someone else is by now. Without one of them, `colleagueId` null, somebody new goes on day sheets under
 * their own name: a technician on none has no visits. The link's id makes it happen once.
 */
export async function signInAsColleague(
  scope: Scope & { personId: string },
  input: { commandId: string; colleagueId: string | null; name: string },
): Promise<{ linked: boolean }> {
  return runCommand(scope, 'crews.sign-in-as', input, async (tx, command) => {
    const { companyId, personId } = scope
    const taken = await tx.colleague.findFirst({ where: { companyId, personId }, select: { id: true } })
    if (taken) return { linked: false }
    const id = input.colleagueId ?? newId()
    if (input.colleagueId === null) {
      await tx.colleague.create({ data: { companyId, id, personId, name: input.name } })
      await command.audit('added', 'colleague', id)
    } else {
      const { count } = await tx.colleague.updateMany({
        where: { companyId, id, personId: null, archivedAt: null },
        data: { personId, version: { increment: 1 } },
      })
      if (count === 0) return { linked: false }
    }
    await command.audit('signs in', 'colleague', id)
    await command.announce('colleague', id)
    return { linked: true }
  })
}
