'use client'
import type { BedExplanation, StoredForecast } from '@almanac/contract/beds'
import { type QuestionKey, questionWords } from '@almanac/records/forecast-question'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { type NumberDisplay, withUnit } from '@almanac/units/format-number'
import Link from 'next/link'
import { answerLink, answerPlaces } from '@/client/answer-place'

type Act = { onEdit: () => void; onInspect: () => void; bedId: string; siteId: string }
type Props = { forecast: StoredForecast; explained: Extract<BedExplanation, { ok: true }> | null; act: Act | null }

/** The one measurement or answer that would sharpen this bed's dates most, how much doubt it would take, and the place to note it. */
export function Sharpen({ forecast, explained, act }: Props) {
  const display = useDisplay()
  const sharpest = explained?.value.sharpest ?? null
  const key = sharpest?.key ?? forecast.question
  if (!key) return null
  return (
    <Notice action={act ? <Answer question={key} {...act} /> : undefined}>
      Best way to narrow these dates: {questionWords[key]}
      {sharpest && sharpest.years >= 0.25 ? ` It would narrow these dates by about ${doubt(sharpest.years, display)}.` : ''}
    </Notice>
  )
}

/** The forms of the bed open on its own page; those of the water are elsewhere. */
function Answer({ question, onEdit, onInspect, ...bed }: Act & { question: QuestionKey }) {
  const place = answerPlaces[question]
  const { href, words } = answerLink(question, bed)
  if (place === 'facts') return <Button onClick={onEdit}>{words}</Button>
  if (place === 'inspection') return <Button onClick={onInspect}>{words}</Button>
  return (
    <LinkButton href={href} link={Link}>
      {words}
    </LinkButton>
  )
}

const doubt = (years: number, display: NumberDisplay) =>
  years < 0.75 ? 'half a year' : years < 1.25 ? 'a year' : withUnit(years, 1, 'years', display)
