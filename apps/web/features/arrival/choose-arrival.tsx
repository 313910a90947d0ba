import { type JobKind, jobKindWords } from '@almanac/records/job-kind'
import type { OfferState } from '@almanac/records/window-offer'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'

type Window = { visitId: string; from: string; until: string }

export type ArrivalOffer = {
  companyName: string
  timeZone: string
  kind: string
  place: string
  state: OfferState
  expiresAt: string
  windows: Window[]
  chosen: Window | null
  sendTo: string
  calendar: string
}

function dayWords(timeZone: string, instant: string): string {
  return new Date(instant).toLocaleDateString('en-US', { timeZone, weekday: 'long', month: 'long', day: 'numeric' })
}

function clockWords(timeZone: string, instant: string): string {
  return new Date(instant).toLocaleTimeString('en-US', { timeZone, hour: 'numeric', minute: '2-digit' })
}

const between = (timeZone: string, { from, until }: Window) => `between ${clockWords(timeZone, from)} and ${clockWords(timeZone, until)}`

const ANSWERS: Record<string, string> = {
  none: 'No time was chosen yet. Choose one of them, then send.',
  late: 'That time could not be booked any more, so nothing was changed. What stands now is below.',
}

/** What the holder of the link sees: up to three arrival windows to choose from, or what became of them. Works without scripts. */
export function ChooseArrival({ offer, answer }: { offer: ArrivalOffer; answer?: string }) {
  const { timeZone, chosen } = offer
  const said = answer ? ANSWERS[answer] : undefined
  return (
    <main className="field mx-auto flex max-w-xl flex-col gap-6 px-5 py-10">
      <header>
        <p className="text-soft">{offer.companyName}</p>
        <h1 className="mt-1 text-h1 font-semibold">{jobKindWords[offer.kind as JobKind] ?? 'Visit'}</h1>
        <p className="mt-1">{offer.place}</p>
      </header>
      {said && !chosen ? <Notice kind="mind">{said}</Notice> : null}
      {chosen ? (
        <>
          <p className="text-lead">
            We come on <strong>{dayWords(timeZone, chosen.from)}</strong>, {between(timeZone, chosen)}.
          </p>
          <p>Please keep the way to the softener clear. To change the time, ring us.</p>
          <div>
            <LinkButton href={offer.calendar}>Put it into my calendar</LinkButton>
          </div>
        </>
      ) : null}
      {offer.state === 'open' ? (
        <form method="post" action={offer.sendTo} className="flex flex-col gap-6">
          <ChoiceGroup
            label="When may we come?"
            hint={`The times are held for you until ${dayWords(timeZone, offer.expiresAt)}, ${clockWords(timeZone, offer.expiresAt)}.`}
            name="window"
            required
            choices={offer.windows.map((window) => ({
              value: window.visitId,
              label: <strong>{dayWords(timeZone, window.from)}</strong>,
              hint: `We arrive ${between(timeZone, window)}.`,
            }))}
          />
          <div>
            <Button kind="ink" type="submit">
              Take this time
            </Button>
          </div>
          <p className="text-soft">None of them suits? Ring us; nothing is booked until you choose.</p>
        </form>
      ) : null}
      {!chosen && offer.state !== 'open' ? (
        <p className="text-lead">
          {offer.state === 'confirmed' ? 'The visit you chose was moved or called off.' : 'These times are no longer held.'} Please ring us
          for another one.
        </p>
      ) : null}
    </main>
  )
}
