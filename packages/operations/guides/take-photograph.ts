import { createHash } from 'node:crypto'
import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { cleanPhotograph } from '@almanac/files/clean-picture'
import { fileStore } from '@almanac/files/file-store'
import type { GuidePhotographKind } from '@almanac/records/picture-kind'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { stillOpen } from '@almanac/softener/procedure/owner-sheet'
import { findGuide, type GuideRef, stepGuide } from './find-guide.ts'
import { readSheet } from './read-sheet.ts'

/** More by one link is a mistake, or somebody who fills the store. */
const MOST_OF_A_LINK = 40

const sumOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

/** What became of a photograph: kept, no picture, too many of them, a hold point with something left open, or a link that ended. */
export type TakenPhotograph = 'kept' | 'no-picture' | 'too-many' | 'missing' | 'gone'

/** What was sent: what it shows, its bytes, and at a hold point what was ticked there. */
type Sent = { kind: GuidePhotographKind; bytes: Uint8Array; answers: Readonly<Record<string, string>> }

const cleaned = (sent: Uint8Array) =>
  cleanPhotograph(sent).catch((error: unknown) => {
    if (error instanceof AppError && error.code === 'invalid') return null
    throw error
  })

/**
 * Keeps a photograph that an owner sent by the link, as those of visits are kept: drawn anew, without where it was taken. Of a hold point it is what the office then looks at.
 * The office’s open pages show it at once.
 */
export async function takePhotograph(of: GuideRef, { kind, bytes: sent, answers }: Sent): Promise<TakenPhotograph> {
  const { companyId, guideId } = of
  const found = await inCompany({ companyId }, (tx) => findGuide(tx, of))
  if (!found?.open) return 'gone'
  const clean = await cleaned(sent)
  if (!clean) return 'no-picture'
  const sheet = found.guide.bedId ? await readSheet(companyId, found.guide.bedId, found.company.locale) : []
  const id = newId()
  await fileStore().put({ companyId, id }, clean.bytes)
  const drop = () => fileStore().remove({ companyId, id })
  try {
    const taken = await inCompany({ companyId }, async (tx): Promise<TakenPhotograph> => {
      await lockRows(tx, companyId, 'owner_guide', [guideId])
      const now = await findGuide(tx, of)
      if (!now?.open) return 'gone'
      const { guide } = now
      const step = sheet.find((one) => one.id === guide.step)
      const holds = step?.hold === kind
      if (step && holds && guide.state === 'holding' && stillOpen(step, answers)) return 'missing'
      if ((await tx.picture.count({ where: { companyId, guideId } })) >= MOST_OF_A_LINK) return 'too-many'
      const command = commandTools(tx, { companyId, personId: null }, 'guides.take-photograph', null)
      await tx.picture.create({
        data: {
          ...{ companyId, id, guideId, kind, state: 'stored', personId: guide.personId, takenAt: command.at, begunAt: command.at },
          ...{ sentBytes: sent.byteLength, sentSha256: sumOf(sent), storedAt: command.at },
          ...{ bytes: clean.bytes.byteLength, sha256: sumOf(clean.bytes), width: clean.width, height: clean.height },
        },
      })
      await command.audit('photographed by the owner', 'softener', guide.softenerId, { guideId, pictureId: id, kind })
      await command.announce('guide', guideId)
      if (holds) await stepGuide(tx, command, guide, 'photo', { toFix: null })
      return 'kept'
    })
    if (taken !== 'kept') await drop()
    return taken
  } catch (error) {
    await drop()
    throw error
  }
}
