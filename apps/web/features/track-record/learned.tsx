import type { ShownFit } from '@almanac/contract/forecasts'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { formatDay } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'

const NAMES: Record<string, string> = {
  medianCleanYears: 'How long beds last on clean water',
  shape: 'How much their lives vary',
  chlorineExponent: 'What chlorine costs in years',
  chloramineWeight: 'How chloramine compares with chlorine',
  ironExponent: 'What iron costs in years',
  crosslinkEffect: 'What 10% resin adds over 8%',
  throughputExponent: 'What heavy use costs in years',
  temperatureEffect: 'What warm water costs in years',
  callOdds: 'How many households call',
  removalRate: 'How often working beds come out',
}

/** How much of the doubt the firm's own records took away, in words an owner can weigh. */
const learnedWords = (share: number) =>
  share >= 0.8 ? 'mostly from your records' : share >= 0.4 ? 'partly from your records, partly rules of thumb' : 'still rules of thumb'

/** What the forecasts in use learned from, and what they could not use. */
export function LearnedPart({ fit }: { fit: ShownFit | null }) {
  const display = useDisplay()
  if (!fit)
    return (
      <Section title="What the forecasts are based on">
        <p>Industry rules of thumb. We learn from your own records every night; the first time within minutes of your import.</p>
      </Section>
    )
  const figures = Object.entries(fit.learned).map(([key, share]) => ({ name: NAMES[key] ?? key, value: learnedWords(share) }))
  return (
    <Section title="What the forecasts are based on">
      {fit.fellBackBecause ? (
        <p className="max-w-[75ch]">{fit.fellBackBecause}</p>
      ) : (
        <p className="max-w-[75ch]">
          Your own records: {showWhole(fit.failures, display)} beds that failed among {showWhole(fit.records, display)}, as known on{' '}
          {formatDay(fit.asOfDay, display)} ({fit.version}). A bed taken out with no reason on record counts partly as worn, by its age.
          Beds removed early, and returns after a job, are counted separately.
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
