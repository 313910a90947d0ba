import type { JobKind } from '@almanac/records/job-kind'
import { languageOf } from '@almanac/records/language'
import type { OfferState } from '@almanac/records/window-offer'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatClock } from '@almanac/units/format-clock'
import { formatDayTitle } from '@almanac/units/format-day'
import { wordsIn } from '@almanac/words/words-in'
import { OtherLanguages } from '@/client/other-languages'
import { telOf } from '@/client/phone-link'

type Window = { visitId: string; from: string; until: string }

export type ArrivalOffer = {
  companyName: string
  telephone: string | null
  timeZone: string
  /** In which the customer reads: their language in the company's region. */
  locale: string
  kind: JobKind
  place: string
  state: OfferState
  expiresAt: string
  windows: Window[]
  chosen: Window | null
  sendTo: string
  calendar: string
}

/** The day without a year: it is at most weeks ahead. */
function dayWords(offer: ArrivalOffer, instant: string): string {
  const day = dayIn(offer.timeZone, instant)
  return formatDayTitle(day, day, offer)
}

/** What the holder of the link sees: up to three arrival windows to choose from, or what became of them. Works without scripts. */
export function ChooseArrival({ offer, answer }: { offer: ArrivalOffer; answer?: string }) {
  const { chosen, telephone: phone, locale } = offer
  const words = wordsIn(locale, 'arrival')
  const kinds = wordsIn(locale, 'jobKind')
  const said = answer === 'none' || answer === 'late' ? words(answer) : undefined
  const between = ({ from, until }: Window) => ({ from: formatClock(from, offer), until: formatClock(until, offer) })
  return (
    <main lang={languageOf(locale)} className="field mx-auto flex max-w-xl flex-col gap-6 px-5 py-10">
      <header>
        <div className="flex flex-wrap items-baseline justify-between gap-x-6">
          <p className="text-soft">{offer.companyName}</p>
          <OtherLanguages locale={locale} />
        </div>
        <h1 className="mt-1 text-h1 font-semibold">{kinds(offer.kind)}</h1>
        <p className="mt-1">{offer.place}</p>
      </header>
      {said && !chosen ? <Notice kind="mind">{said}</Notice> : null}
      {chosen ? (
        <>
          <p className="text-lead">
            {words.rich('weCome', { ...between(chosen), day: dayWords(offer, chosen.from), strong: (text) => <strong>{text}</strong> })}
          </p>
          <p>
            {words('clearPath')} {phone ? words('toChange', { phone }) : words('toChangeUs')}
          </p>
          <div>
            <LinkButton href={offer.calendar}>{words('addToCalendar')}</LinkButton>
          </div>
        </>
      ) : null}
      {offer.state === 'open' ? (
        <form method="post" action={offer.sendTo} className="flex flex-col gap-6">
          <input type="hidden" name="l" value={languageOf(locale)} />
          <ChoiceGroup
            label={words('when')}
            hint={words('heldUntil', { day: dayWords(offer, offer.expiresAt), clock: formatClock(offer.expiresAt, offer) })}
            name="window"
            required
            choices={offer.windows.map((window) => ({
              value: window.visitId,
              label: <strong>{dayWords(offer, window.from)}</strong>,
              hint: words('weArrive', between(window)),
            }))}
          />
          <div>
            <Button kind="ink" type="submit">
              {words('choose')}
            </Button>
          </div>
          <p className="text-soft">{phone ? words('noneWork', { phone }) : words('noneWorkUs')}</p>
        </form>
      ) : null}
      {!chosen && offer.state !== 'open' ? (
        <p className="text-lead">
          {offer.state === 'confirmed' ? words('movedOrCanceled') : words('noLongerHeld')}{' '}
          {phone ? words('callForAnother', { phone }) : words('callUsForAnother')}
        </p>
      ) : null}
      {chosen || !phone ? null : (
        <p>
          <a href={telOf(phone)} className="py-3 underline underline-offset-4">
            {phone}
          </a>
        </p>
      )}
    </main>
  )
}
