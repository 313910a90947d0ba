import type { ChangePerson } from '@almanac/contract/crews'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { crewPerson } from '@almanac/database/read/crews'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { refuseInUse } from './refuse-in-use.ts'
import { personAudit, personColumns } from './write-person.ts'

/** Changes what a person may do, when they work and where they start; or that they left the company, or came back. */
export async function changePerson(scope: Scope & { personId: string }, input: ChangePerson): Promise<{ id: string; version: number }> {
  const { commandId: _, colleagueId: id, version, left, personId, ...values } = input
  return runCommand(scope, 'crews.change-person', input, async (tx, command) => {
    const { companyId } = scope
    const where = { companyId_id: { companyId, id } }
    const read = () => tx.colleague.findUnique({ where, include: { absences: { where: { archivedAt: null } } } })
    const before = await read()
    if (!before) throw notFound('person')
    if (left && !before.archivedAt) await refuseInUse(tx, companyId, command.at, before.name, { members: { some: { colleagueId: id } } })
    const { count } = await tx.colleague.updateMany({
      where: { companyId, id, version },
      data: { ...personColumns(values), personId, archivedAt: left ? (before.archivedAt ?? command.at) : null, version: { increment: 1 } },
    })
    await expectChanged(count, 'person', version, { ...values, personId, left }, async () => {
      const row = await read()
      return row && crewPerson(row)
    })
    await command.audit('changed', 'colleague', id, { ...personAudit(values), left })
    await command.announce('colleague', id, version + 1)
    return { id, version: version + 1 }
  })
}
