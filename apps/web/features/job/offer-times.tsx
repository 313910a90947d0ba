'use client'
import type { JobPage } from '@almanac/contract/jobs'
import type { WindowOffer } from '@almanac/contract/windows'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextInput } from '@almanac/ui/text-input'
import { formatClock, formatInstant } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { ChooseTimes } from './choose-times.tsx'

/** Up to three arrival windows for the customer: offered by link or on the phone, held until one is chosen or the time is up. */
export function OfferTimes({ job }: { job: JobPage }) {
  const { api } = useSession()
  const [choosing, setChoosing] = useState(false)
  const offer = useQuery(api.windows.ofJob.queryOptions({ input: { jobId: job.id } }))
  if (offer.error) return <Problem happened={readFailure(offer.error).message} onRetry={() => void offer.refetch()} />
  if (!offer.data) return <Skeleton lines={3} label="Loading what is offered" />
  const open = offer.data.offer
  return (
    <Section
      title="Times for the customer"
      actions={open || choosing ? null : <Button onClick={() => setChoosing(true)}>Offer times</Button>}
    >
      {open ? <OpenOffer offer={open} /> : null}
      {!open && choosing ? <ChooseTimes job={job} onClose={() => setChoosing(false)} /> : null}
      {open || choosing ? null : <p className="text-soft">No times offered. You can hold up to three while the customer decides.</p>}
    </Section>
  )
}

/** What is held, the link to send, and the customer's answer when it comes by telephone. */
function OpenOffer({ offer }: { offer: WindowOffer }) {
  const display = useDisplay()
  const { api } = useSession()
  const [copied, setCopied] = useState(false)
  const confirm = useCommand(api.windows.confirm.mutationOptions())
  const withdraw = useCommand(api.windows.withdraw.mutationOptions())
  const failure = confirm.error ?? withdraw.error
  const link = `${location.origin}${offer.path}`
  const copy = () =>
    navigator.clipboard.writeText(link).then(
      () => setCopied(true),
      () => setCopied(false),
    )
  return (
    <>
      {failure ? <Problem happened={readFailure(failure).message} /> : null}
      <ul className="border-t border-line">
        {offer.windows.map((window) => (
          <li key={window.visitId} className="flex flex-wrap items-center justify-between gap-x-4 gap-y-1 border-b border-line py-2">
            <span>
              <span className="font-semibold">{formatNearDay(window.day, display)}</span>, arriving {formatClock(window.from, display)} to{' '}
              {formatClock(window.until, display)}
              <span className="block text-small text-soft">{window.crewName}</span>
            </span>
            <Button
              busy={confirm.isPending}
              onClick={() => confirm.send({ offerId: offer.id, version: offer.version, visitId: window.visitId })}
              aria-label={`The customer chose ${formatNearDay(window.day, display)} ${formatClock(window.from, display)}`}
            >
              Customer chose this
            </Button>
          </li>
        ))}
      </ul>
      <p className="my-3 text-small text-soft">Held until {formatInstant(offer.expiresAt, display)}; then the crews are free again.</p>
      <div className="flex flex-wrap items-end gap-3">
        <div className="min-w-0 grow basis-60">
          <TextInput
            label="The customer's link"
            hint="Whoever has it can choose one of these times."
            readOnly
            value={link}
            onFocus={(event) => event.target.select()}
          />
        </div>
        <Button onClick={copy}>Copy the link</Button>
        <Button kind="quiet" busy={withdraw.isPending} onClick={() => withdraw.send({ offerId: offer.id, version: offer.version })}>
          Withdraw offer
        </Button>
      </div>
      {copied ? <Notice kind="done">Copied. Send it to the customer as you usually write to them.</Notice> : null}
    </>
  )
}
