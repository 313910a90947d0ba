import { proposeIn } from '@almanac/operations/jobs/propose-job'
import { answerReminder, type LinkAnswer } from '@almanac/operations/reminders/answer-reminder'
import { oneOf } from '@almanac/records/choices'
import { languages } from '@almanac/records/language'
import { askAgainMonths, doneBys, reminderAnswers } from '@almanac/records/reminder-answer'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { addDays, isIsoDay } from '@almanac/units/calendar/calendar-day'
import { BODY_BYTES, bodyWithin } from '@/server/body'
import { reminderPath } from '@/server/public-paths'
import { withPublicLink } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

const MOST_SIGNS = 300
const DAYS_A_MONTH = 30.4375

/** The answer that a form holds; null for what is none. */
function readAnswer(form: URLSearchParams): LinkAnswer | null {
  const kind = oneOf(reminderAnswers, form.get('answer'))
  const text = (name: string) => (form.get(name) ?? '').replaceAll('\u0000', '').trim()
  if (kind === 'days') {
    const days = text('days').slice(0, MOST_SIGNS)
    return days ? { kind, days } : null
  }
  if (kind === 'not-now') {
    const months = askAgainMonths.find((one) => String(one) === form.get('months'))
    return months ? { kind, askAfter: addDays(now().toISOString().slice(0, 10), Math.round(months * DAYS_A_MONTH)) } : null
  }
  if (kind === 'done') {
    const by = oneOf(doneBys, form.get('by'))
    return by && isIsoDay(text('day')) ? { kind, day: text('day'), by } : null
  }
  return kind === null ? null : { kind }
}

/** Takes a customer's answer from the page's form, and shows the page again; what did not work is said there. Whatever is no such form is no answer. */
export async function POST(request: Request, { params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  return withPublicLink(request, 'reminder', token, async ({ record: { companyId, id: reminderId } }) => {
    const form = new URLSearchParams((await bodyWithin(request, BODY_BYTES.arrival)).toString('utf8'))
    const language = oneOf(languages, form.get('l'))
    const back = (said?: 'nothing' | 'day') => {
      const query = new URLSearchParams({ ...(said && { said }), ...(language && { l: language }) }).toString()
      return new Response(null, { status: 303, headers: { location: `${reminderPath(token)}${query ? `?${query}` : ''}` } })
    }
    const answer = readAnswer(form)
    if (!answer) return back('nothing')
    try {
      await answerReminder({ companyId, reminderId }, answer, proposeIn)
      return back()
    } catch (error) {
      if (error instanceof AppError && error.code === 'invalid') return back('day')
      throw error
    }
  })
}
