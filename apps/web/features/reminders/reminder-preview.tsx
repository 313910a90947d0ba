'use client'
import type { ReminderRow } from '@almanac/contract/reminders'
import { Dialog } from '@almanac/ui/dialog'
import { useDisplay } from '@almanac/ui/display'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { lengthWords } from '@/client/length-words'
import { useSession } from '@/client/providers'

/** What a reminder would say if it were approved now. */
export function ReminderPreview({ reminder, onClose }: { reminder: Pick<ReminderRow, 'id' | 'siteLabel'>; onClose: () => void }) {
  const { api } = useSession()
  const display = useDisplay()
  const preview = useQuery(api.reminders.preview.queryOptions({ input: { reminderId: reminder.id } }))
  return (
    <Dialog open onClose={onClose} title={reminder.siteLabel} place="margin">
      {preview.isPending ? <Skeleton lines={6} label="Loading the message" /> : null}
      {preview.error ? <Problem happened={readFailure(preview.error).message} onRetry={() => void preview.refetch()} /> : null}
      {preview.data?.refused ? <Notice kind="mind">{preview.data.refused}</Notice> : null}
      {preview.data?.body ? (
        <>
          <p className="whitespace-pre-line wrap-anywhere text-soft">To {preview.data.address}</p>
          <p className="mt-3 font-medium wrap-anywhere">{preview.data.subject}</p>
          <p className="mt-2 whitespace-pre-line wrap-anywhere">{preview.data.body}</p>
          {preview.data.text ? <p className="mt-3 text-small text-soft">{lengthWords(preview.data.text, display)}</p> : null}
        </>
      ) : null}
    </Dialog>
  )
}
