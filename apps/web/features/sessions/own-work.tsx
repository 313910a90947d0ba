'use client'
import { DefinitionList } from '@almanac/ui/definition-list'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import { absenceWords, breakWords, shiftWords, skillList } from '@/client/crew-words'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCrewSpeaking } from '@/client/use-crew-speaking'

/** What the firm has down of the person who looks: what they may do and when they work. Nothing for someone on no day sheets. */
export function OwnWork() {
  const words = useWords('ownAccount')
  const speaking = useCrewSpeaking()
  const { api, figures } = useSession()
  const asked = useQuery(api.crews.own.queryOptions())
  if (asked.error) return <Problem happened={readFailure(asked.error).message} onRetry={() => void asked.refetch()} />
  const own = asked.data?.own
  if (!own) return null
  return (
    <Section title={words('work')}>
      <p className="mb-3 text-soft">{words('workLead')}</p>
      <DefinitionList
        facts={[
          { name: words('onSheets'), value: own.name },
          { name: words('cleared'), value: skillList(own, figures.valves, speaking) },
          { name: words('hours'), value: shiftWords(own.shifts, speaking) },
          { name: words('breaks'), value: breakWords(own.breaks, speaking) },
          { name: words('starts'), value: words(own.startsAtHome ? 'atHome' : 'atYard') },
          {
            name: words('daysOff'),
            value: own.absences.length > 0 ? own.absences.map((one) => absenceWords(one, speaking)).join('; ') : words('noneComing'),
          },
        ]}
      />
    </Section>
  )
}
