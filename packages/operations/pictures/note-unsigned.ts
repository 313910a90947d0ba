import type { NoteUnsigned } from '@almanac/contract/pictures'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import { visitOfPicture } from './begin-picture.ts'

/** Notes that nobody signed for a visit, and why not. */
export async function noteUnsigned(scope: Scope & { personId: string }, input: NoteUnsigned): Promise<{ visitId: string }> {
  const { visitId, answer, at } = input
  return runCommand(scope, 'pictures.note-unsigned', input, async (tx, command) => {
    const { companyId, personId } = scope
    await visitOfPicture(tx, companyId, visitId)
    const id = newId()
    await tx.signature.create({ data: { companyId, id, visitId, answer, at: new Date(at), personId } })
    await command.audit(answer, 'visit', visitId)
    await command.announce('picture', id)
    return { visitId }
  })
}
