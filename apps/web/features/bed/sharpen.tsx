'use client'
import type { BedExplanation, StoredForecast } from '@almanac/contract/beds'
import type { QuestionKey } from '@almanac/contract/forecasts'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { type NumberDisplay, withUnit } from '@almanac/units/format-number'
import Link from 'next/link'

type Act = { onEdit: () => void; onInspect: () => void; siteId: string }
type Props = { forecast: StoredForecast; explained: Extract<BedExplanation, { ok: true }> | null; act: Act | null }

/** Where the answer to each question is written down. */
const NOTED: Record<QuestionKey, 'facts' | 'inspection' | 'water'> = {
  beginning: 'facts',
  crosslink: 'facts',
  'last-seen': 'facts',
  inspection: 'inspection',
  'water-test': 'water',
  disinfectant: 'water',
  iron: 'water',
}

/** The one measurement or answer that would sharpen this bed's dates most, how much doubt it would take, and the place to note it. */
export function Sharpen({ forecast, explained, act }: Props) {
  const display = useDisplay()
  const sharpest = explained?.value.sharpest ?? null
  const words = sharpest?.words ?? forecast.question
  if (!words) return null
  const noted = sharpest ? NOTED[sharpest.key] : 'facts'
  const action = !act ? undefined : noted === 'inspection' ? (
    <Button onClick={act.onInspect}>Note an inspection</Button>
  ) : noted === 'water' ? (
    <LinkButton href={`/sites/${act.siteId}`} link={Link}>
      Note the water
    </LinkButton>
  ) : (
    <Button onClick={act.onEdit}>Change facts</Button>
  )
  return (
    <Notice action={action}>
      What would sharpen this most: {words}
      {sharpest && sharpest.years >= 0.25 ? ` It would take about ${doubt(sharpest.years, display)} from the doubt about these dates.` : ''}
    </Notice>
  )
}

const doubt = (years: number, display: NumberDisplay) =>
  years < 0.75 ? 'half a year' : years < 1.25 ? 'a year' : withUnit(years, 1, 'years', display)
