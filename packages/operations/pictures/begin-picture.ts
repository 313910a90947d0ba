import type { BeginPicture } from '@almanac/contract/pictures'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { wordsIn } from '@almanac/words/words-in'

/** More of one visit is a mistake, or somebody who fills the store. */
const MOST_OF_A_VISIT = 60

/** The visit that a picture is of. A time that is only offered is no visit yet. */
export async function visitOfPicture(tx: Tx, companyId: string, visitId: string) {
  const visit = await tx.visit.findFirst({ where: { companyId, id: visitId, state: { not: 'offered' } }, select: { id: true } })
  if (!visit) throw notFound('visit')
  return visit
}

/**
 * Notes a picture that a tablet will send, under the id that the tablet gave it; a signature with who signed. Begun twice it is begun once; its bytes follow
 * (`receivePicture`). A visit that is closed takes pictures as well: they may come after its close-out.
 */
export async function beginPicture(scope: Scope & { personId: string }, input: BeginPicture): Promise<{ pictureId: string }> {
  const { commandId: id, visitId, kind, takenAt, bytes: sentBytes, sha256: sentSha256, signedBy } = input
  return runCommand(scope, 'pictures.begin', input, async (tx, command) => {
    const { companyId, personId } = scope
    if ((kind === 'signature') !== (signedBy !== undefined))
      throw new AppError('invalid', (locale) => wordsIn(locale, 'photographs')('refused/name'))
    await visitOfPicture(tx, companyId, visitId)
    const there = await tx.picture.count({ where: { companyId, visitId } })
    if (there >= MOST_OF_A_VISIT)
      throw new AppError('conflict', (locale) => wordsIn(locale, 'photographs')('refused/tooMany', { most: String(MOST_OF_A_VISIT) }))
    const taken = new Date(takenAt)
    const own = { companyId, visitId, personId }
    await tx.picture.create({ data: { ...own, id, kind, state: 'coming', takenAt: taken, sentBytes, sentSha256, begunAt: command.at } })
    if (signedBy !== undefined)
      await tx.signature.create({ data: { ...own, id: newId(), answer: 'signed', name: signedBy, at: taken, pictureId: id } })
    await command.audit('begun', 'visit', visitId, { pictureId: id, kind })
    await command.announce('picture', id)
    return { pictureId: id }
  })
}
