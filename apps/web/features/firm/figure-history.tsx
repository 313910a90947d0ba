'use client'
import { HistoryLine } from '@almanac/ui/history-line'
import { Section } from '@almanac/ui/section'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { figureName, figureWords } from '@/client/figure-words'
import { useSession } from '@/client/providers'
import { useChanges } from './use-figures.ts'

/** Every change of a figure or a setting, newest first. */
export function FigureHistory() {
  const { me } = useSession()
  const { timeZone } = me.company
  const display = me.company
  const changes = useChanges()
  const words = (key: string, value: unknown) => (value === null ? 'usual' : figureWords(key, value, display))
  return (
    <Section title="Changes">
      {changes.length === 0 ? (
        <p className="text-soft">No changes yet: every value is the default.</p>
      ) : (
        <HistoryLine
          label="Changes to company settings"
          entries={changes.map((change) => ({
            key: change.id,
            day: dayIn(timeZone, change.at),
            kind: 'note',
            kindWord: 'note',
            title: figureName(change.field, display, change.to ?? change.from),
            children: `${words(change.field, change.from)} → ${words(change.field, change.to)}, by ${change.who ?? 'someone no longer here'}${change.note ? `: “${change.note}”` : ''}`,
          }))}
        />
      )}
    </Section>
  )
}
