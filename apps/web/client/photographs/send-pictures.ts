import type { Api } from '../api.ts'
import { readFailure } from '../failure.ts'
import type { Owner } from '../field/field-store.ts'
import { pageHeaders } from '../page-company.ts'
import { type KeptPicture, picturesOf, putPicture } from './picture-store.ts'

const PATIENCE_MS = 20_000
/** With a weak signal much in one piece never comes through; so much does, and what came counts. */
const PIECE_BYTES = 128 * 1024

/** The office will never take it: sent again it would be refused again. */
class Refused extends Error {}
const REFUSALS = ['invalid', 'not-found', 'conflict', 'command-reused', 'too-large']
const REFUSED_STATUS = [400, 404, 410, 413]

/** Sends a picture's bytes, from where the server has them, by the open protocol's own client. It comes when something is sent: the page needs it for nothing else. */
async function sendBytes(id: string, bytes: ArrayBuffer): Promise<void> {
  const { DetailedError, Upload } = await import('tus-js-client')
  await new Promise<void>((resolve, reject) => {
    const upload = new Upload(new Blob([bytes]), {
      uploadUrl: `${location.origin}/api/pictures/${id}/upload`,
      headers: pageHeaders(),
      chunkSize: PIECE_BYTES,
      retryDelays: null,
      storeFingerprintForResuming: false,
      onSuccess: () => resolve(),
      onError: (error) => {
        const answer = error instanceof DetailedError ? error.originalResponse : null
        if (!answer || !REFUSED_STATUS.includes(answer.getStatus())) return reject(error)
        reject(new Refused(sentenceOf(answer.getBody())))
      },
    })
    upload.start()
  })
}

function sentenceOf(body: string): string {
  try {
    return String((JSON.parse(body) as { message?: unknown }).message ?? '')
  } catch {
    return ''
  }
}

async function sendOne(api: Api, { id: commandId, visitId, at, taken }: KeptPicture): Promise<void> {
  const within = { signal: AbortSignal.timeout(PATIENCE_MS) }
  try {
    if (taken.is === 'unsigned') await api.pictures.noteUnsigned.call({ commandId, visitId, answer: taken.answer, at }, within)
    else {
      const { bytes, sha256 } = taken
      const what = taken.is === 'signature' ? { kind: 'signature' as const, signedBy: taken.name } : { kind: taken.kind }
      await api.pictures.begin.call({ commandId, visitId, takenAt: at, bytes: bytes.byteLength, sha256, ...what }, within)
    }
  } catch (error) {
    const { code, detail, message } = readFailure(error)
    if (REFUSALS.includes(code) && detail.otherCompany !== true) throw new Refused(message)
    throw error
  }
  if (taken.is !== 'unsigned') await sendBytes(commandId, taken.bytes)
}

async function sendInTurn(owner: Owner, api: Api): Promise<void> {
  for (const row of await picturesOf(owner)) {
    if (row.sent || row.refused !== null) continue
    try {
      await sendOne(api, row)
      await putPicture({ ...row, sent: true })
    } catch (error) {
      if (!(error instanceof Refused)) throw error
      await putPicture({ ...row, refused: error.message })
    }
  }
}

/**
 * Sends what waits, oldest first, by one window of the browser at a time. Throws where one did not come through: all that is left waits. What the office refuses for good is
 * kept with its word, and the next follows.
 */
export async function sendPictures(owner: Owner, api: Api): Promise<void> {
  const locks = 'locks' in navigator ? (navigator.locks as LockManager | undefined) : undefined
  if (!locks) return sendInTurn(owner, api)
  await locks.request(`pictures ${owner}`, { ifAvailable: true }, async (lock) => {
    if (lock) await sendInTurn(owner, api)
  })
}
