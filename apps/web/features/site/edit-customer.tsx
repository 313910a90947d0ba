'use client'
import type { SiteTenure } from '@almanac/contract/sites'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { useQuery } from '@tanstack/react-query'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { ErasePerson } from '@/client/erase-person'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { ArchiveThing } from './archive-thing.tsx'

const NAMES = { name: 'Name', reference: 'Customer number', notes: 'Notes' }

/** Changes the customer, on all the sites they hold. */
export function EditCustomer({ customer, onClose }: { customer: SiteTenure['customer']; onClose: () => void }) {
  const { api } = useSession()
  const [seen] = useState(customer.version)
  const { values, field } = useFields(() => ({ name: customer.name, reference: customer.reference ?? '', notes: customer.notes ?? '' }))
  const change = useCommand(api.sites.changeCustomer.mutationOptions(), { onDone: onClose })
  const router = useRouter()
  const archive = useCommand(api.archive.customer.mutationOptions(), { onDone: () => router.push('/sites') })
  const erase = useCommand(api.erase.customer.mutationOptions())
  const [asked, setAsked] = useState(false)
  const counts = useQuery({
    ...api.erase.previewCustomer.queryOptions({ input: { customerId: customer.id } }),
    enabled: asked && erase.data === undefined,
  })
  const send = (version: number) => change.send({ customerId: customer.id, version, ...values })
  return (
    <FormDialog
      title="Edit customer"
      lead={customer.sites > 1 ? `This customer has ${customer.sites} sites; the change shows on all of them.` : undefined}
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(customer.version)}
      busy={change.isPending}
      error={change.error}
      names={NAMES}
    >
      <TextInput label={NAMES.name} required maxLength={160} {...field('name')} />
      <TextInput label={NAMES.reference} maxLength={60} {...field('reference')} />
      <TextArea label={NAMES.notes} {...field('notes')} />
      <ArchiveThing
        label="Archive customer"
        consequence="The customer, the sites they hold and the softeners there leave every list and forecast."
        command={{ ...archive, send: (reason) => archive.send({ customerId: customer.id, version: seen, reason }) }}
      />
      <ErasePerson
        name={customer.name}
        counts={counts}
        onAsk={() => setAsked(true)}
        erase={{ ...erase, send: () => erase.send({ customerId: customer.id, version: seen }) }}
        onDone={onClose}
      >
        <p>
          Name, number, notes, contacts and messages go, and whatever else names them. Sites, softeners and past work stay, under “Erased
          customer”.
        </p>
      </ErasePerson>
    </FormDialog>
  )
}
