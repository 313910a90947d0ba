'use client'
import type { CrewPerson, CrewVehicle } from '@almanac/contract/crews'
import { Button } from '@almanac/ui/button'
import { Empty } from '@almanac/ui/empty'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { type AwayOf, WriteAway } from './away.tsx'
import { EditPerson } from './edit-person.tsx'
import { EditVehicle } from './edit-vehicle.tsx'
import { PeoplePart } from './people-part.tsx'
import { VehicleCard } from './vehicle-card.tsx'

type Form = { kind: 'person'; id: string | null } | { kind: 'vehicle'; id: string | null } | { kind: 'away'; of: AwayOf }

const byId = <T extends { id: string }>(rows: readonly T[], id: string | null) => rows.find((one) => one.id === id) ?? null

/** Who goes out and what they drive: what planning needs to know of each. */
export function Crews() {
  const { api } = useSession()
  const list = useQuery(api.crews.list.queryOptions())
  const [form, setForm] = useState<Form | null>(null)
  const close = () => setForm(null)
  const people: readonly CrewPerson[] = list.data?.people ?? []
  const vehicles: readonly CrewVehicle[] = list.data?.vehicles ?? []
  return (
    <>
      <PageHead
        title="People and vehicles"
        lead="Who signs in, who goes out and when they work, and what the vehicles carry. Plans and proposed times keep to it."
      />
      {list.error ? <Problem happened={readFailure(list.error).message} onRetry={() => void list.refetch()} /> : null}
      {list.isPending ? <Skeleton lines={8} label="Loading the crews" /> : null}
      {list.data ? (
        <>
          <PeoplePart
            people={people}
            onEdit={(id) => setForm({ kind: 'person', id })}
            onAway={({ id, name }) => setForm({ kind: 'away', of: { of: 'person', subjectId: id, name } })}
          />
          <Section title="Vehicles" actions={<Button onClick={() => setForm({ kind: 'vehicle', id: null })}>Add a vehicle</Button>}>
            {vehicles.length === 0 ? (
              <Empty title="No vehicle yet">A rebed needs one: it carries the resin out and the spent bed back.</Empty>
            ) : null}
            <ul className="grid gap-x-10 lg:grid-cols-2">
              {vehicles.map((vehicle) => (
                <VehicleCard
                  key={vehicle.id}
                  vehicle={vehicle}
                  onEdit={() => setForm({ kind: 'vehicle', id: vehicle.id })}
                  onAway={() => setForm({ kind: 'away', of: { of: 'vehicle', subjectId: vehicle.id, name: vehicle.name } })}
                />
              ))}
            </ul>
          </Section>
        </>
      ) : null}
      {form?.kind === 'person' ? (
        <EditPerson key={form.id} person={byId(people, form.id)} members={list.data?.members ?? []} onClose={close} />
      ) : null}
      {form?.kind === 'vehicle' ? <EditVehicle key={form.id} vehicle={byId(vehicles, form.id)} onClose={close} /> : null}
      {form?.kind === 'away' ? <WriteAway of={form.of} onClose={close} /> : null}
    </>
  )
}
