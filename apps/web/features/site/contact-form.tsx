'use client'
import type { ContactLine } from '@almanac/contract/site-facts'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { contactRoles, contactRoleWords } from '@almanac/records/contact-role'
import { languages, languageWords } from '@almanac/records/language'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { ErasePerson } from '@/client/erase-person'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'

type Props = { siteId: string; contact: ContactLine | null; contacts: readonly ContactLine[]; onClose: () => void }

/** A new way to reach the holder, or a change to one. */
export function ContactForm({ siteId, contact, contacts, onClose }: Props) {
  const { api } = useSession()
  const [seen] = useState(contact?.version ?? 1)
  const [onlyThisSite, setOnlyThisSite] = useState(false)
  const { values, field } = useFields(() => ({
    role: (contact?.role ?? 'occupier') as string,
    name: contact?.name ?? '',
    phone: contact?.phone ?? '',
    otherPhones: contact?.otherPhones.join('\n') ?? '',
    email: contact?.email ?? '',
    language: contact?.language ?? '',
  }))
  const add = useCommand(api.sites.addContact.mutationOptions(), { onDone: onClose })
  const change = useCommand(api.sites.changeContact.mutationOptions(), { onDone: onClose })
  const archive = useCommand(api.sites.archiveContact.mutationOptions(), { onDone: onClose })
  const erase = useCommand(api.erase.contact.mutationOptions())
  const [asked, setAsked] = useState(false)
  const counts = useQuery({
    ...api.erase.previewContact.queryOptions({ input: { contactId: contact?.id ?? '' } }),
    enabled: contact !== null && asked && erase.data === undefined,
  })
  const now = contacts.find((one) => one.id === contact?.id)?.version ?? seen
  const send = (version: number) => {
    const role = oneOf(contactRoles, values.role) ?? 'occupier'
    const otherPhones = values.otherPhones.split(/[\n;]/).flatMap((one) => one.trim() || [])
    const body = { ...values, otherPhones, email: values.email.trim(), role, language: oneOf(languages, values.language) ?? null }
    if (contact) change.send({ contactId: contact.id, version, ...body })
    else add.send({ siteId, onlyThisSite, ...body })
  }
  return (
    <FormDialog
      title={contact ? 'Edit contact' : 'Add a contact'}
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(now)}
      busy={add.isPending || change.isPending}
      error={add.error ?? change.error ?? archive.error}
      names={{ role: 'Role', name: 'Name', phone: 'Phone', otherPhones: 'More phones', email: 'Email', language: 'Language' }}
    >
      <Select label="Role" choices={choicesOf(contactRoles, contactRoleWords)} {...field('role')} />
      <TextInput label="Name" maxLength={120} {...field('name')} />
      <TextInput label="Phone" type="tel" maxLength={40} {...field('phone')} />
      <TextArea label="More phones" hint="One a line; texts go to the number above" rows={2} maxLength={320} {...field('otherPhones')} />
      <TextInput label="Email" type="email" maxLength={160} {...field('email')} />
      <Select
        label="Language"
        hint="Of the pages and papers we send them"
        choices={[{ value: '', label: 'your company’s' }, ...choicesOf(languages, languageWords)]}
        {...field('language')}
      />
      {contact ? (
        <>
          <Button kind="quiet" onClick={() => archive.send({ contactId: contact.id, version: seen })} busy={archive.isPending}>
            Archive contact
          </Button>
          <ErasePerson
            name={contact.name ?? 'this contact'}
            counts={counts}
            onAsk={() => setAsked(true)}
            erase={{ ...erase, send: () => erase.send({ contactId: contact.id, version: seen }) }}
            onDone={onClose}
          >
            <p>Name, phones, email and messages go, and whatever else names them. The customer and past work stay.</p>
          </ErasePerson>
        </>
      ) : (
        <Checkbox
          label="For this site only"
          hint="Otherwise they’re the contact for every site of this customer"
          checked={onlyThisSite}
          onChange={(event) => setOnlyThisSite(event.target.checked)}
        />
      )}
    </FormDialog>
  )
}
