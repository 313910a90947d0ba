'use client'
import type { CrewPerson } from '@almanac/contract/crews'
import { DefinitionList } from '@almanac/ui/definition-list'
import type { ReactNode } from 'react'
import { breakWords, shiftWords, skillList } from '@/client/crew-words'
import { useSession } from '@/client/providers'
import { useCrewSpeaking } from '@/client/use-crew-speaking'
import { useMoney } from '@/client/use-money'
import { Absences } from './absences.tsx'
import { CrewCard } from './crew-card.tsx'

type Props = { person: CrewPerson; signIn?: ReactNode; onEdit: () => void; onAway: () => void }

/** What is down of one person: how they sign in, and what planning knows of them. */
export function PersonCard({ person, signIn, onEdit, onAway }: Props) {
  return (
    <CrewCard name={person.name} left={person.left ? 'left the company' : null} awayLabel="Days off" onEdit={onEdit} onAway={onAway}>
      {signIn}
      <PersonFacts person={person} />
    </CrewCard>
  )
}

/** The facts of a person; days away can be taken back unless they are only shown. */
function PersonFacts({ person }: { person: CrewPerson }) {
  const speaking = useCrewSpeaking()
  const { figures } = useSession()
  const money = useMoney()
  const usual = [
    person.doesAll ? 'all work' : '',
    person.shifts.length === 0 ? 'works company hours' : '',
    person.startsAtHome ? '' : 'starts at the yard',
  ].filter(Boolean)
  const facts = [
    ...(person.doesAll ? [] : [{ name: 'Does', value: skillList(person, figures.valves, speaking) }]),
    ...(person.shifts.length > 0 ? [{ name: 'Works', value: shiftWords(person.shifts, speaking) }] : []),
    ...(person.breaks.length > 0 ? [{ name: 'Breaks', value: breakWords(person.breaks, speaking) }] : []),
    ...(person.startsAtHome ? [{ name: 'Starts', value: 'at home' }] : []),
    ...(person.overtimeMinorPerHour === null ? [] : [{ name: 'Overtime', value: `${money.words(person.overtimeMinorPerHour)} an hour` }]),
    ...(person.absences.length > 0 ? [{ name: 'Off', value: <Absences name={person.name} absences={person.absences} />, key: 'off' }] : []),
  ]
  return (
    <>
      {usual.length > 0 ? <p className="border-t border-line py-2 text-soft first-letter:capitalize">{usual.join(', ')}.</p> : null}
      {facts.length > 0 ? <DefinitionList facts={facts} /> : null}
    </>
  )
}
