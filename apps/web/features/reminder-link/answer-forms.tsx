import { languageOf } from '@almanac/records/language'
import { askAgainMonths, type ReminderAnswerKind } from '@almanac/records/reminder-answer'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { DayInput } from '@almanac/ui/day-input'
import { TextArea } from '@almanac/ui/text-area'
import { wordsIn } from '@almanac/words/words-in'
import type { ReactNode } from 'react'

type Common = { sendTo: string; locale: string }

/** One answer: a line that opens to its form. */
function Answer(
  props: Common & { kind: ReminderAnswerKind; label: string; hint: string; send: string; open?: boolean; children: ReactNode },
) {
  const { sendTo, locale, kind, label, hint, send, open, children } = props
  return (
    <details name="answer" open={open} className="border-b border-line">
      <summary className="flex min-h-control cursor-pointer items-baseline justify-between gap-4 py-3">
        <span className="font-medium">{label}</span> <span className="text-small text-soft">{hint}</span>
      </summary>
      <form method="post" action={sendTo} className="flex flex-col gap-4 pt-1 pb-5">
        <input type="hidden" name="l" value={languageOf(locale)} />
        <input type="hidden" name="answer" value={kind} />
        {children}
        <div>
          <Button kind="ink" type="submit">
            {send}
          </Button>
        </div>
      </form>
    </details>
  )
}

/** What a customer can answer, each with what has to be known for it. Nothing is sent before its button is pressed. */
export function AnswerForms({ sendTo, today, locale }: Common & { today: string }) {
  const words = wordsIn(locale, 'reminderLink')
  const common = { sendTo, locale }
  return (
    <section aria-label={words('what')} className="border-t border-line">
      <Answer {...common} kind="days" label={words('days')} hint={words('daysHint')} send={words('daysSend')} open>
        <TextArea label={words('daysField')} name="days" maxLength={300} required />
      </Answer>
      <Answer {...common} kind="not-now" label={words('notNow')} hint={words('notNowHint')} send={words('notNowSend')}>
        <ChoiceGroup
          label={words('notNowField')}
          name="months"
          required
          choices={askAgainMonths.map((months) => ({ value: String(months), label: words('months', { months }) }))}
        />
      </Answer>
      <Answer {...common} kind="done" label={words('done')} hint={words('doneHint')} send={words('doneSend')}>
        <DayInput label={words('doneDay')} name="day" max={today} required />
        <ChoiceGroup
          label={words('doneBy')}
          name="by"
          required
          choices={[
            { value: 'you', label: words('byYou') },
            { value: 'other-company', label: words('byOther') },
            { value: 'self', label: words('bySelf') },
          ]}
        />
      </Answer>
      <Answer {...common} kind="moved" label={words('moved')} hint={words('movedHint')} send={words('movedSend')}>
        <p>{words('movedText')}</p>
      </Answer>
      <Answer {...common} kind="stop" label={words('stop')} hint={words('stopHint')} send={words('stopSend')}>
        <p>{words('stopText')}</p>
      </Answer>
    </section>
  )
}
