'use client'
import type { CrewPerson } from '@almanac/contract/crews'
import type { Member } from '@almanac/contract/people'
import { Button } from '@almanac/ui/button'
import { Empty } from '@almanac/ui/empty'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { ChangeSignIn } from './change-sign-in.tsx'
import { Invitations } from './invitations.tsx'
import { Invite } from './invite.tsx'
import { PersonCard } from './person-card.tsx'
import { SignInLine } from './sign-in-line.tsx'

type Props = { people: readonly CrewPerson[]; onEdit: (id: string | null) => void; onAway: (person: CrewPerson) => void }
type Form = { kind: 'invite'; as: CrewPerson | null } | { kind: 'sign-in'; personId: string }

/** The company's people: how each signs in, which is an owner's business, and what planning knows of them. */
export function PeoplePart({ people, onEdit, onAway }: Props) {
  const { api } = useSession()
  const owner = usePermission('manage:company')
  const { data, error, refetch } = useQuery({ ...api.people.list.queryOptions(), enabled: owner })
  const [form, setForm] = useState<Form | null>(null)
  const members: readonly Member[] = data?.members ?? []
  const onSheets = new Set(people.map((one) => one.personId))
  const others = members.filter((one) => !onSheets.has(one.personId))
  const close = () => setForm(null)
  const signIn = (person: CrewPerson) => {
    const member = members.find((one) => one.personId === person.personId) ?? null
    if (!data) return null
    return (
      <SignInLine
        member={member}
        name={person.name}
        onChange={() => member && setForm({ kind: 'sign-in', personId: member.personId })}
        onInvite={person.left || person.personId ? null : () => setForm({ kind: 'invite', as: person })}
      />
    )
  }
  const chosen = form?.kind === 'sign-in' ? members.find((one) => one.personId === form.personId) : undefined
  return (
    <Section
      title="People"
      actions={
        <span className="flex flex-wrap gap-3">
          {owner && data ? (
            <Button kind="ink" onClick={() => setForm({ kind: 'invite', as: null })}>
              Invite someone
            </Button>
          ) : null}
          <Button onClick={() => onEdit(null)}>Add to day sheets</Button>
        </span>
      }
    >
      {error ? <Problem happened={readFailure(error).message} onRetry={() => void refetch()} /> : null}
      {data ? <Invitations invitations={data.invitations} /> : null}
      {people.length + others.length === 0 ? (
        <Empty title="Nobody yet">Add whoever goes out; then they can go on day sheets. An owner invites whoever signs in.</Empty>
      ) : null}
      <ul className="grid gap-x-10 lg:grid-cols-2">
        {people.map((person) => (
          <PersonCard
            key={person.id}
            person={person}
            signIn={signIn(person)}
            onEdit={() => onEdit(person.id)}
            onAway={() => onAway(person)}
          />
        ))}
        {others.map((member) => (
          <li key={member.personId} className="pb-6">
            <h3 className="pb-1 text-lead font-semibold">
              {member.name}
              <span className="font-normal text-soft"> · not on day sheets</span>
            </h3>
            <SignInLine
              member={member}
              name={member.name}
              onChange={() => setForm({ kind: 'sign-in', personId: member.personId })}
              onInvite={null}
            />
          </li>
        ))}
      </ul>
      {form?.kind === 'invite' ? (
        <Invite colleagues={people.filter((one) => !one.personId && !one.left)} as={form.as} mail={data?.mail ?? false} onClose={close} />
      ) : null}
      {chosen ? <ChangeSignIn key={chosen.personId} member={chosen} onClose={close} /> : null}
    </Section>
  )
}
