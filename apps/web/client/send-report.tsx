'use client'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from './failure.ts'
import { useSession } from './providers.tsx'
import { ReportReader } from './report-reader.tsx'
import { useCommand } from './use-command.ts'

/** Whom the report can be mailed to, and why not to the others. */
function Readers({ visitId }: { visitId: string }) {
  const { api } = useSession()
  const words = useWords('sendReport')
  const { data, error, refetch, isFetching } = useQuery(api.reports.readers.queryOptions({ input: { visitId } }))
  const send = useCommand(api.reports.send.mutationOptions())
  if (error) return <Problem happened={readFailure(error).message} onRetry={() => void refetch()} retrying={isFetching} />
  if (!data) return <Skeleton lines={3} label={words('loading')} />
  return (
    <>
      <p>{words('lead')}</p>
      {data.coming > 0 ? <Notice kind="mind">{words('coming', { count: data.coming })}</Notice> : null}
      {send.error ? <Notice kind="mind">{readFailure(send.error).message}</Notice> : null}
      {data.readers.length === 0 ? <p className="mt-3">{words('nobody')}</p> : null}
      <ul className="mt-3 border-t border-line">
        {data.readers.map((reader) => (
          <ReportReader
            key={reader.contactId}
            reader={reader}
            busy={send.isPending}
            onSend={() => send.send({ visitId, contactId: reader.contactId })}
          />
        ))}
      </ul>
    </>
  )
}

/** Opens to whom the service report of a closed visit can be mailed. */
export function SendReport({ visitId }: { visitId: string }) {
  const words = useWords('sendReport')
  const [open, setOpen] = useState(false)
  return (
    <>
      <Button onClick={() => setOpen(true)}>{words('open')}</Button>
      <Dialog open={open} place="margin" onClose={() => setOpen(false)} title={words('title')}>
        <Readers visitId={visitId} />
      </Dialog>
    </>
  )
}
