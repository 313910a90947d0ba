'use client'
import type { CrewPerson } from '@almanac/contract/crews'
import { DefinitionList } from '@almanac/ui/definition-list'
import { breakWords, shiftWords, skillList } from '@/client/crew-words'
import { useSession } from '@/client/providers'
import { useMoney } from '@/client/use-money'
import { Absences } from './absences.tsx'
import { CrewCard } from './crew-card.tsx'

type Props = { person: CrewPerson; onEdit: () => void; onAway: () => void }

/** What is down of one person. */
export function PersonCard({ person, onEdit, onAway }: Props) {
  return (
    <CrewCard name={person.name} left={person.left ? 'left the firm' : null} awayLabel="Days off" onEdit={onEdit} onAway={onAway}>
      <PersonFacts person={person} />
    </CrewCard>
  )
}

/** The facts of a person; days away can be taken back unless they are only shown. */
export function PersonFacts({ person }: { person: CrewPerson }) {
  const { figures } = useSession()
  const money = useMoney()
  const valveName = (id: string) => figures.valves.find((one) => one.id === id)?.label ?? 'a valve no longer on the cards'
  const facts = [
    { name: 'Does', value: skillList(person, valveName) },
    { name: 'Works', value: shiftWords(person.shifts) },
    ...(person.breaks.length > 0 ? [{ name: 'Breaks', value: breakWords(person.breaks) }] : []),
    { name: 'Starts', value: person.startsAtHome ? 'at home' : 'at the yard' },
    ...(person.overtimeMinorPerHour === null ? [] : [{ name: 'Overtime', value: `${money.words(person.overtimeMinorPerHour)} an hour` }]),
    ...(person.absences.length > 0 ? [{ name: 'Off', value: <Absences name={person.name} absences={person.absences} />, key: 'off' }] : []),
  ]
  return <DefinitionList facts={facts} />
}
