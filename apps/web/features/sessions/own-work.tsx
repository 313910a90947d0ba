'use client'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { useQuery } from '@tanstack/react-query'
import { absenceWords, breakWords, shiftWords, skillList } from '@/client/crew-words'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'

/** What the firm has down of the person who looks: what they may do and when they work. Nothing for someone on no day sheets. */
export function OwnWork() {
  const display = useDisplay()
  const { api, figures } = useSession()
  const asked = useQuery(api.crews.own.queryOptions())
  if (asked.error) return <Problem happened={readFailure(asked.error).message} onRetry={() => void asked.refetch()} />
  const own = asked.data?.own
  if (!own) return null
  return (
    <Section title="What the planner knows about you">
      <p className="mb-3 text-soft">If something here is wrong, tell your dispatcher. Your days are planned from it.</p>
      <DefinitionList
        facts={[
          { name: 'On day sheets as', value: own.name },
          { name: 'Cleared for', value: skillList(own, figures.valves) },
          { name: 'Hours', value: shiftWords(own.shifts, display) },
          { name: 'Breaks', value: breakWords(own.breaks, display) },
          { name: 'Starts', value: own.startsAtHome ? 'at home' : 'at the yard' },
          {
            name: 'Days off',
            value: own.absences.length > 0 ? own.absences.map((one) => absenceWords(one, display)).join('; ') : 'none coming up',
          },
        ]}
      />
    </Section>
  )
}
