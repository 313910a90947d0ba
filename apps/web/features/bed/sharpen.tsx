'use client'
import type { BedExplanation, StoredForecast } from '@almanac/contract/beds'
import type { QuestionKey } from '@almanac/records/forecast-question'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { type NumberDisplay, showNumber } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'
import Link from 'next/link'
import { answerLink, answerPlaces } from '@/client/answer-place'

type Act = { onEdit: () => void; onInspect: () => void; bedId: string; siteId: string }
type Props = { forecast: StoredForecast; explained: Extract<BedExplanation, { ok: true }> | null; act: Act | null }

/** The one measurement or answer that would sharpen this bed's dates most, how much doubt it would take, and the place to note it. */
export function Sharpen({ forecast, explained, act }: Props) {
  const display = useDisplay()
  const words = useWords('bed')
  const sharpest = explained?.value.sharpest ?? null
  const key = sharpest?.key ?? forecast.question
  if (!key) return null
  const question = words(`question/${key}`)
  return (
    <Notice action={act ? <Answer question={key} {...act} /> : undefined}>
      {sharpest && sharpest.years >= 0.25
        ? words('narrowBy', { question, doubt: doubt(sharpest.years, display, words) })
        : words('narrow', { question })}
    </Notice>
  )
}

/** The forms of the bed open on its own page; those of the water are elsewhere. */
function Answer({ question, onEdit, onInspect, ...bed }: Act & { question: QuestionKey }) {
  const words = useWords('bed')
  const place = answerPlaces[question]
  const { href, act } = answerLink(question, bed)
  if (place === 'facts') return <Button onClick={onEdit}>{words(act)}</Button>
  if (place === 'inspection') return <Button onClick={onInspect}>{words(act)}</Button>
  return (
    <LinkButton href={href} link={Link}>
      {words(act)}
    </LinkButton>
  )
}

const doubt = (years: number, display: NumberDisplay, words: Words<'bed'>) =>
  years < 0.75 ? words('halfYear') : years < 1.25 ? words('aYear') : words('years', { years: showNumber(years, 1, display) ?? '' })
