'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useRouter } from 'next/navigation'
import { type ChangeEvent, useRef, useState } from 'react'
import { pageHeaders } from '@/client/page-company'

const UNREACHED = 'Can’t reach the server, so the file wasn’t sent. Try again when you have a connection.'

/** Sends a file and answers the import it became, or why not. */
async function upload(file: File): Promise<{ batchId: string } | { message: string }> {
  try {
    const answer = await fetch(`/api/imports?name=${encodeURIComponent(file.name)}`, { method: 'POST', body: file, headers: pageHeaders() })
    return (await answer.json()) as { batchId: string } | { message: string }
  } catch {
    return { message: UNREACHED }
  }
}

/** Chooses a file and sends it; what was read of it follows on its own page. */
export function BringIn({ label = 'Import a file' }: { label?: string }) {
  const router = useRouter()
  const input = useRef<HTMLInputElement>(null)
  const [busy, setBusy] = useState(false)
  const [failure, setFailure] = useState<string | null>(null)
  const send = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0]
    event.target.value = ''
    if (!file) return
    setBusy(true)
    setFailure(null)
    const answer = await upload(file)
    if ('batchId' in answer) router.push(`/imports/${answer.batchId}`)
    else {
      setFailure(answer.message)
      setBusy(false)
    }
  }
  return (
    <div>
      <input
        ref={input}
        type="file"
        accept=".csv,.tsv,.txt,.xlsx"
        aria-label="Spreadsheet to import"
        className="sr-only"
        tabIndex={-1}
        onChange={(event) => void send(event)}
      />
      <Button kind="ink" busy={busy} busyLabel="Sending the file" onClick={() => input.current?.click()}>
        {label}
      </Button>
      {failure ? <Problem happened={failure} /> : null}
    </div>
  )
}
