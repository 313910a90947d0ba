import { languageOf } from '@almanac/records/language'
import type { ReminderAnswerKind } from '@almanac/records/reminder-answer'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { formatLongMonth } from '@almanac/units/format-day'
import type { Words } from '@almanac/words/words'
import { wordsIn } from '@almanac/words/words-in'
import { OtherLanguages } from '@/client/other-languages'
import { telOf } from '@/client/phone-link'
import { AnswerForms } from './answer-forms.tsx'

export type ShownReminder = {
  companyName: string
  telephone: string | null
  locale: string
  today: string
  state: 'open' | 'answered' | 'gone'
  place: string | null
  why: string
  answer: { kind: ReminderAnswerKind; askAfter: string | null } | null
  /** Where held times are chosen; null where none are held. */
  offer: string | null
  sendTo: string
}

type Said = Words<'reminderLink'>

function thanks(words: Said, { kind, askAfter }: { kind: ReminderAnswerKind; askAfter: string | null }, locale: string): string {
  if (kind === 'days') return words('thanksDays')
  if (kind === 'not-now') return words('thanksNotNow', { month: askAfter ? formatLongMonth(askAfter, { locale }) : '' })
  if (kind === 'done') return words('thanksDone')
  return kind === 'moved' ? words('thanksMoved') : words('thanksStop')
}

/** What the holder of the link sees: why new resin is due, and what they can answer; or what they answered. Works without scripts. */
export function AnswerReminder({ reminder, said }: { reminder: ShownReminder; said?: string }) {
  const { telephone: phone, locale, state, companyName } = reminder
  const words = wordsIn(locale, 'reminderLink')
  return (
    <main lang={languageOf(locale)} className="field mx-auto flex max-w-xl flex-col gap-5 px-5 py-8">
      <header className="flex flex-wrap items-baseline justify-between gap-x-6 border-b border-ink pb-2">
        <p className="font-semibold wrap-anywhere">{companyName}</p>
        {phone ? (
          <a href={telOf(phone)} className="py-3 underline underline-offset-4">
            {phone}
          </a>
        ) : null}
      </header>
      {state === 'gone' ? (
        <h1 className="text-h1 font-semibold">{words('gone')}</h1>
      ) : (
        <div>
          <h1 className="text-h1 font-semibold">{state === 'answered' ? words('thanks') : words('heading')}</h1>
          <p className="mt-1 text-soft wrap-anywhere">{reminder.place}</p>
        </div>
      )}
      {state === 'gone' ? <p>{phone ? words('goneCall', { phone }) : words('goneCallUs')}</p> : null}
      {state === 'open' ? (
        <>
          <p>{reminder.why}</p>
          {said === 'day' || said === 'nothing' ? (
            <Notice kind="mind">{said === 'day' ? words('wrongDay') : words('nothing')}</Notice>
          ) : null}
        </>
      ) : null}
      {reminder.offer ? (
        <div>
          <p className="mb-2">{words('held')}</p>
          <LinkButton href={reminder.offer}>{words('chooseTime')}</LinkButton>
        </div>
      ) : null}
      {state === 'open' ? <AnswerForms sendTo={reminder.sendTo} today={reminder.today} locale={locale} /> : null}
      {reminder.answer ? <p className="text-lead">{thanks(words, reminder.answer, locale)}</p> : null}
      {state === 'gone' ? null : <p className="text-soft">{phone ? words('otherwise', { phone }) : words('otherwiseUs')}</p>}
      <OtherLanguages locale={locale} />
    </main>
  )
}
