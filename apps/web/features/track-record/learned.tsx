import type { ShownFit } from '@almanac/contract/forecasts'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { formatDay } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'

const NAMES: Record<string, string> = {
  medianCleanYears: 'How long beds last on clean water',
  shape: 'How alike their lives are',
  chlorineExponent: 'What chlorine takes',
  chloramineWeight: 'How chloramine compares with chlorine',
  ironExponent: 'What iron takes',
  crosslinkEffect: 'What 10% resin gives over 8%',
  throughputExponent: 'What heavy use takes',
  temperatureEffect: 'What warm water takes',
}

/** How much of the doubt the firm's own records took away, in words an owner can weigh. */
const learnedWords = (share: number) =>
  share >= 0.8
    ? 'mostly from your records'
    : share >= 0.4
      ? 'partly from your records, partly the trade’s guess'
      : 'still the trade’s guess'

/** What the forecasts in use learned from, and what they could not use. */
export function LearnedPart({ fit }: { fit: ShownFit | null }) {
  const display = useDisplay()
  if (!fit)
    return (
      <Section title="What the forecasts go by">
        <p>The trade’s first guesses. Your own records are fitted every night; the first time within minutes of their coming in.</p>
      </Section>
    )
  const figures = Object.entries(fit.learned).map(([key, share]) => ({ name: NAMES[key] ?? key, value: learnedWords(share) }))
  return (
    <Section title="What the forecasts go by">
      {fit.fellBackBecause ? (
        <p className="max-w-[75ch]">{fit.fellBackBecause}</p>
      ) : (
        <p className="max-w-[75ch]">
          Your own records: {showWhole(fit.failures, display)} beds that failed among {showWhole(fit.records, display)}, as known on{' '}
          {formatDay(fit.asOfDay, display)} ({fit.version}). A rebed whose reason nobody wrote down counts as a worn bed; beds removed
          early, and call-backs after a job, are kept apart.
        </p>
      )}
      {fit.leftOut.length > 0 ? (
        <p className="mt-1 max-w-[75ch] text-small text-soft">
          Not used: {fit.leftOut.map((one) => `${showWhole(one.count, display)} (${one.reason.replace(/\.$/, '')})`).join('; ')}.
        </p>
      ) : null}
      {figures.length > 0 ? (
        <div className="mt-3 max-w-2xl">
          <DefinitionList facts={figures} />
        </div>
      ) : null}
    </Section>
  )
}
