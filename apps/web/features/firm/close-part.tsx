'use client'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { useDisplay } from '@almanac/ui/display'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { TextInput } from '@almanac/ui/text-input'
import { TextLink } from '@almanac/ui/text-link'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatDay } from '@almanac/units/format-day'
import Link from 'next/link'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** Closing the company, for its owner: what happens when, asked with its name, and the way back. */
export function ClosePart() {
  const display = useDisplay()
  const { api, me } = useSession()
  const router = useRouter()
  const { id: companyId, name, timeZone, closesAt } = me.company
  const [asking, setAsking] = useState(false)
  const [typed, setTyped] = useState('')
  const onDone = () => {
    setAsking(false)
    // Who may come in, and what this page says of it, is read again.
    router.refresh()
  }
  const close = useCommand(api.closing.close.mutationOptions(), { onDone })
  const keep = useCommand(api.closing.keep.mutationOptions(), { onDone })
  if (closesAt)
    return (
      <Section title="Closing your company">
        <Notice
          kind="mind"
          action={
            <Button kind="ink" busy={keep.isPending} onClick={() => keep.send({ companyId })}>
              Keep the company
            </Button>
          }
        >
          Everything is erased on {formatDay(dayIn(timeZone, closesAt), display)}. Until then only owners can sign in. Your records are
          under{' '}
          <TextLink href="/exports" link={Link}>
            Export
          </TextLink>
          .
        </Notice>
        {keep.error ? <Problem happened={readFailure(keep.error).message} /> : null}
      </Section>
    )
  return (
    <Section title="Close your company">
      <p className="mb-3 max-w-[75ch] text-soft">
        Everyone but owners is signed out at once. Everything is exported for you, then erased after 30 days. Until then you can take it
        back.
      </p>
      <Button kind="danger" onClick={() => setAsking(true)}>
        Close the company
      </Button>
      <Dialog
        open={asking}
        onClose={() => setAsking(false)}
        title={`Close ${name}?`}
        actions={
          <>
            <Button onClick={() => setAsking(false)}>Keep the company</Button>
            <Button
              kind="danger"
              busy={close.isPending}
              busyLabel="Closing"
              disabled={typed.trim().toLowerCase() !== name.trim().toLowerCase()}
              onClick={() => close.send({ companyId })}
            >
              Close the company
            </Button>
          </>
        }
      >
        <div className="flex flex-col gap-3">
          <p>
            Customers, softeners, visits, photographs and sign-ins are erased in 30 days, for good. We can’t reach backups outside this app.
          </p>
          {close.error ? <Problem happened={readFailure(close.error).message} /> : null}
          <TextInput label="Type the company’s name" value={typed} onChange={(event) => setTyped(event.target.value)} autoComplete="off" />
        </div>
      </Dialog>
    </Section>
  )
}
