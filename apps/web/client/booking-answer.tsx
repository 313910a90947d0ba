'use client'
import type { Unusual } from '@almanac/records/day-plan'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { Dialog } from '@almanac/ui/dialog'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { formatClock, formatClockTime } from '@almanac/units/format-clock'
import { versionNow } from './failure.ts'
import type { BookingActions } from './use-booking.ts'

const ASKED: Record<Unusual, string> = {
  past: 'That time has passed',
  'outside-hours': "Outside the crew's hours",
  crew: 'This crew isn’t cleared for this',
  parts: 'Its parts may not be there',
  'site-hours': 'Outside the hours of the site',
  order: 'Before the visit it follows',
  promise: 'The customer was promised another time',
  drive: 'Too little time to drive',
  load: 'More than the vehicle takes',
}

/** What a booking still asks of the person: to confirm something unusual, to choose between two versions, or to read what went wrong. */
export function BookingAnswer({ desk }: { desk: BookingActions }) {
  const { failure, asked, confirm, unusual, close, busy } = desk
  const [first, ...others] = unusual
  if (!failure || !asked) return null
  if (confirm && first)
    return (
      <Dialog
        open
        onClose={close}
        title={others.length === 0 ? ASKED[first] : `${unusual.length} things are unusual`}
        actions={
          <>
            <Button onClick={close}>{asked.what === 'call-off' ? 'Keep visit' : 'Cancel'}</Button>
            <Button kind="ink" onClick={confirm} busy={busy}>
              {asked.what === 'move' ? 'Move' : asked.what === 'book' ? 'Book' : 'Take off'} anyway
            </Button>
          </>
        }
      >
        <p>{failure.message}</p>
      </Dialog>
    )
  if (failure.code === 'version-conflict') return <TwoVersions desk={desk} />
  return (
    <div className="relative">
      <Problem happened={failure.message} reference={failure.code === 'unexpected' ? failure.requestId : undefined} />
      <Button kind="quiet" onClick={close}>
        Close
      </Button>
    </div>
  )
}

type Current = { version?: number; state?: string; startsAt?: string }

/** A colleague was faster: what stands now beside what one wanted. */
function TwoVersions({ desk }: { desk: BookingActions }) {
  const display = useDisplay()
  const { failure, asked, close, overrule, busy } = desk
  const current = (failure?.detail.current ?? {}) as Current
  const version = failure ? versionNow(failure) : 0
  const now = current.startsAt ? `${current.state}, ${formatClock(current.startsAt, display)}` : (current.state ?? 'changed')
  const wanted = asked && 'at' in asked.body ? formatClockTime(asked.body.at, display) : 'off the sheet'
  const mayOverrule = asked?.what === 'move' && current.state === 'booked'
  return (
    <Dialog
      open
      onClose={close}
      title="Changed by someone else meanwhile"
      actions={
        <>
          <Button onClick={close}>Use theirs</Button>
          {mayOverrule ? (
            <Button kind="ink" onClick={() => overrule(version)} busy={busy}>
              Use mine
            </Button>
          ) : null}
        </>
      }
    >
      <p className="mb-3">{failure?.message}</p>
      <DefinitionList
        facts={[
          { name: 'Theirs', value: now },
          { name: 'Yours', value: wanted },
        ]}
      />
    </Dialog>
  )
}
