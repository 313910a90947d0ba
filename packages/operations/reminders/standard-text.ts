import type { Channel } from '@almanac/records/channel'
import { wordsIn } from '@almanac/words/words-in'
import type { ReminderName } from './reminder-names.ts'

export type OwnText = { subject: string; body: string }

const put = (name: ReminderName) => `{{ ${name} }}`
const choose = (name: ReminderName, yes: string, no: string) => `{% if ${name} %}${yes}{% else %}${no}{% endif %}`

/**
 * What a reminder says until a company writes its own, in the language of a locale, with names to fill in: by mail and letter why, when and how to answer; as a
 * text the least of it; for the telephone what whoever calls says. Nothing is promised and nothing is pressed.
 */
export function standardText(channel: Channel, locale: string): OwnText {
  const words = wordsIn(locale, 'letter')
  const [name, site, company, phone, month] = (['name', 'site', 'company', 'phone', 'month'] as const).map(put) as [
    ...[string, string, string, string, string],
  ]
  const old = words('old', { site })
  const why = put('why')
  if (channel === 'phone')
    return { subject: choose('name', words('callAbout', { name, site }), words('callSomebodyAbout', { site })), body: `${old}\n\n${why}` }
  const subject = words('subject', { site })
  if (channel === 'text') {
    const due = choose('month', words('shortBefore', { company, site, month }), words('shortNow', { company, site }))
    const call = `{% if phone %} ${words('shortCall', { phone })}{% endif %}`
    return { subject, body: `${due}${call} ${words('shortLink', { link: put('answer_link') })}` }
  }
  const again = `{% if notice > 1 %}${words('again')}\n\n{% endif %}`
  const paragraphs = [
    choose('name', words('dear', { name }), words('hello')),
    old,
    `${again}${why}`,
    words('forecast'),
    ...(channel === 'email' ? [words('answerHere', { link: put('answer_link') })] : []),
    choose('phone', words('answer', { phone }), words('answerUs')),
    company,
  ]
  return { subject, body: paragraphs.join('\n\n') }
}
