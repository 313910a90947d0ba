import { createHash } from 'node:crypto'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { cleanPhotograph, cleanSignature } from '@almanac/files/clean-picture'
import { fileStore } from '@almanac/files/file-store'
import { now } from '@almanac/runtime/clock'
import { AppError, notFound } from '@almanac/runtime/errors'
import { wordsIn } from '@almanac/words/words-in'
import { bytesHere, dropHalfSent, readHalfSent, writeBehind } from './half-sent.ts'

const sumOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

/** A picture that is on its way or here; one that was erased, or is another company's, is none. */
async function findPicture(scope: Pick<Scope, 'companyId'>, pictureId: string) {
  const { companyId } = scope
  const found = await inCompany(scope, (tx) =>
    tx.picture.findFirst({ where: { companyId, id: pictureId, state: { in: ['coming', 'stored'] } } }),
  )
  if (!found?.visitId) throw notFound('picture')
  return { ...found, visitId: found.visitId }
}

type Picture = Awaited<ReturnType<typeof findPicture>>

/** The picture as it is kept. What is none will never be one: it is not waited for any more. */
async function cleaned({ companyId }: Scope, { id, kind }: Picture, sent: Uint8Array) {
  try {
    return await (kind === 'signature' ? cleanSignature(sent) : cleanPhotograph(sent))
  } catch (error) {
    await inCompany({ companyId }, (tx) =>
      tx.picture.updateMany({ where: { companyId, id, state: 'coming' }, data: { state: 'gone', version: { increment: 1 } } }),
    )
    await dropHalfSent(companyId, id)
    throw error
  }
}

/**
 * Makes of all the bytes of a picture what is kept, puts it into the store and says so. Broken off at any place it is done again with the same result. What does not
 * have the sum that was announced is forgotten, to be sent from its beginning.
 */
async function keepPicture(scope: Scope & { personId: string }, picture: Picture): Promise<void> {
  const { companyId } = scope
  const { id, visitId, kind, sentSha256 } = picture
  const sent = await readHalfSent(companyId, id)
  if (sumOf(sent) !== sentSha256) {
    await dropHalfSent(companyId, id)
    throw new AppError('conflict', (locale) => wordsIn(locale, 'photographs')('refused/otherBytes'), { sendAgain: true })
  }
  const { bytes, width, height } = await cleaned(scope, picture, sent)
  await fileStore().put({ companyId, id }, bytes)
  const kept = await inCompany(scope, async (tx) => {
    const stored = { state: 'stored', bytes: bytes.byteLength, sha256: sumOf(bytes), width, height, storedAt: now() }
    const { count } = await tx.picture.updateMany({
      where: { companyId, id, state: 'coming' },
      data: { ...stored, version: { increment: 1 } },
    })
    if (count === 0) return tx.picture.findFirst({ where: { companyId, id, state: 'stored' }, select: { id: true } })
    const tools = commandTools(tx, scope, 'pictures.receive', id)
    await tools.audit('stored', 'visit', visitId, { pictureId: id, kind, bytes: bytes.byteLength })
    await tools.announce('picture', id)
    return { id }
  })
  // Erased while it came.
  if (!kept) await fileStore().remove({ companyId, id })
  await dropHalfSent(companyId, id)
  if (!kept) throw notFound('picture')
}

/** How much of a picture is here, of how much. One that has all its bytes and was not kept, since the server ended just then, is kept now. */
export async function pictureSoFar(scope: Scope & { personId: string }, pictureId: string): Promise<{ offset: number; length: number }> {
  const picture = await findPicture(scope, pictureId)
  const { id, state, sentBytes: length } = picture
  if (state === 'stored') return { offset: length, length }
  const offset = await bytesHere(scope.companyId, id)
  if (offset === length) await keepPicture(scope, picture)
  return { offset: Math.min(offset, length), length }
}

/**
 * Takes what comes of a picture behind what is here already; with its last byte it is kept. Throws `conflict` where `offset` is not how much is here: whoever sends asks
 * again (`pictureSoFar`) and goes on there. What is broken off stays as far as it came.
 */
export async function receivePicture(
  scope: Scope & { personId: string },
  pictureId: string,
  offset: number,
  pieces: (most: number) => AsyncIterable<Uint8Array>,
): Promise<{ offset: number; length: number }> {
  const { companyId } = scope
  const picture = await findPicture(scope, pictureId)
  const { id, state, sentBytes: length } = picture
  const here = state === 'stored' ? length : await bytesHere(companyId, id)
  if (offset !== here) throw new AppError('conflict', (locale) => wordsIn(locale, 'photographs')('refused/offset'), { offset: here })
  if (state === 'stored') return { offset: length, length }
  const at = await writeBehind(companyId, id, offset, pieces(length - offset))
  if (at === length) await keepPicture(scope, picture)
  return { offset: at, length }
}
