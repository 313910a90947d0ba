'use client'
import type { CrewPerson } from '@almanac/contract/crews'
import type { ShownOnce } from '@almanac/contract/people'
import { oneOf } from '@almanac/records/choices'
import { roles } from '@almanac/records/role'
import { Checkbox } from '@almanac/ui/checkbox'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { useMutation } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useFetchChanged } from '@/client/fetch-changed'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useFields } from '@/client/use-fields'
import { HandOver } from './hand-over.tsx'
import { RoleChoice } from './role-choice.tsx'

/** `colleagues`: who of the day sheets has no sign-in yet; `as` is the one that the invitation begins with. */
type Props = { colleagues: readonly CrewPerson[]; as: CrewPerson | null; mail: boolean; onClose: () => void }

/** Invites someone: by mail where there is a mail server, or by a link to hand over. */
export function Invite({ colleagues, as, mail, onClose }: Props) {
  const { api } = useSession()
  const changed = useFetchChanged()
  const { values, field } = useFields(() => ({ name: as?.name ?? '', email: '', colleagueId: as?.id ?? '' }))
  const [role, setRole] = useState<string>('technician')
  const [byMail, setByMail] = useState(mail)
  const [made, setMade] = useState<ShownOnce | null>(null)
  const invite = useMutation(
    api.people.invite.mutationOptions({
      onSuccess: async (answer) => {
        setMade(answer)
        await changed('people.invite')
      },
    }),
  )
  if (made) return <HandOver made={made} title={`Invitation for ${values.name}`} what="joins your company" onClose={onClose} />
  const send = () =>
    invite.mutate({
      ...{ name: values.name, email: byMail ? values.email : null, byMail },
      ...{ role: oneOf(roles, role) ?? 'technician', colleagueId: values.colleagueId || null },
    })
  return (
    <FormDialog
      title="Invite someone"
      onClose={onClose}
      onSubmit={send}
      busy={invite.isPending}
      error={null}
      saveLabel={byMail ? 'Send the invitation' : 'Make the link'}
    >
      {invite.error ? <Problem happened={readFailure(invite.error).message} /> : null}
      <TextInput label="Name" required maxLength={80} {...field('name')} />
      <RoleChoice required value={role} onChange={setRole} />
      <Select
        label="On day sheets as"
        hint="Their own visits then show under Today’s work"
        none={role === 'technician' ? 'someone new' : 'not on day sheets'}
        choices={colleagues.map(({ id, name }) => ({ value: id, label: name }))}
        {...field('colleagueId')}
      />
      {mail ? (
        <Checkbox label="Send the link by email" checked={byMail} onChange={(event) => setByMail(event.target.checked)} />
      ) : (
        <p className="text-soft">No mail server is set up, so you get a link to hand over.</p>
      )}
      {byMail ? <TextInput label="Email" type="email" required maxLength={254} {...field('email')} /> : null}
    </FormDialog>
  )
}
