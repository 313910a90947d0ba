'use client'
import type { CrewVehicle } from '@almanac/contract/crews'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useSession } from '@/client/providers'
import { Absences } from './absences.tsx'
import { CrewCard } from './crew-card.tsx'
import { roomWords } from './room-words.ts'

type Props = { vehicle: CrewVehicle; onEdit: () => void; onAway: () => void }

/** What is down of one vehicle. */
export function VehicleCard({ vehicle, onEdit, onAway }: Props) {
  const { me } = useSession()
  const facts = [
    { name: 'Carries', value: roomWords(vehicle, me.company) },
    ...(vehicle.absences.length > 0
      ? [{ name: 'Out of service', value: <Absences name={vehicle.name} absences={vehicle.absences} />, key: 'off' }]
      : []),
  ]
  return (
    <CrewCard name={vehicle.name} left={vehicle.left ? 'retired' : null} awayLabel="Out of service" onEdit={onEdit} onAway={onAway}>
      <DefinitionList facts={facts} />
    </CrewCard>
  )
}
