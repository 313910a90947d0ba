'use client'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { useSession } from '../providers.tsx'

/** How a person goes: what has to work before anything here is wiped (the server's word), and where to afterwards. */
export type Going = { leave: () => Promise<unknown>; after: () => void }
type Unsent = { waiting: number; drafts: number }
type Asked = Going & Unsent

// The store comes when somebody leaves: the office's pages have no other use for it.
const store = () => import('./field-store.ts')
const pictures = () => import('../photographs/picture-store.ts')

/**
 * Leaving this device as a person or a company: what waits is sent first; what then is still nowhere else is asked about, and nothing of the person stays here to be
 * read. `go` begins it, `question` is shown while something is asked or sent, `failed` once the server could not be reached: then all stays as it is.
 */
export function useLeaving() {
  const { me, api } = useSession()
  const words = useWords('sending')
  const [asked, setAsked] = useState<Asked | null>(null)
  const [failed, setFailed] = useState(false)
  const [busy, setBusy] = useState(false)

  const end = async ({ leave, after }: Going, unsent: 'keep' | 'throw-away') => {
    setAsked(null)
    try {
      await leave()
    } catch {
      return setFailed(true)
    }
    const { forgetPerson, ownerOf } = await store()
    const { forgetPictures } = await pictures()
    await forgetPerson(ownerOf(me), unsent).catch(() => {})
    await forgetPictures(ownerOf(me), unsent).catch(() => {})
    after()
  }
  const begin = async (going: Going) => {
    const { ownerOf, unsentOf } = await store()
    const { sendOutbox } = await import('./send-outbox.ts')
    const { unsentPictures } = await pictures()
    const { sendPictures } = await import('../photographs/send-pictures.ts')
    const owner = ownerOf(me)
    // A device that keeps nothing has nothing to ask about.
    const left = await sendOutbox(owner, api.field.send.call, () => {})
      .then(() => sendPictures(owner, api).catch(() => {}))
      .then(async () => {
        const { waiting, drafts } = await unsentOf(owner)
        return { waiting: waiting + (await unsentPictures(owner)), drafts }
      })
      .catch((): Unsent => ({ waiting: 0, drafts: 0 }))
    if (left.waiting + left.drafts > 0) setAsked({ ...going, ...left })
    else await end(going, 'throw-away')
  }
  const go = async (going: Going) => {
    if (busy) return
    setFailed(false)
    setBusy(true)
    await begin(going).catch(() => setFailed(true))
    setBusy(false)
  }
  const question = asked ? (
    <Dialog
      open
      onClose={() => setAsked(null)}
      title={words('leaveTitle')}
      actions={
        <>
          <Button onClick={() => setAsked(null)}>{words('cancel')}</Button>
          <Button kind="danger" onClick={() => void end(asked, 'throw-away')}>
            {words('leaveThrow')}
          </Button>
          <Button kind="ink" onClick={() => void end(asked, 'keep')}>
            {words('leaveKeep')}
          </Button>
        </>
      }
    >
      <p>{words('leaveText', { waiting: asked.waiting, drafts: asked.drafts })}</p>
    </Dialog>
  ) : busy ? (
    <output>{words('leaving')}</output>
  ) : null
  return { go, question, failed }
}
