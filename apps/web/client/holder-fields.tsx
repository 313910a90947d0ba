'use client'
import type { Holder } from '@almanac/contract/site-commands'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { TextInput } from '@almanac/ui/text-input'
import { useQuery } from '@tanstack/react-query'
import { useSession } from './providers.tsx'
import type { useFields } from './use-fields.ts'

export type HolderTexts = {
  name: string
  phone: string
  email: string
  /** Set where a customer of the firm was chosen. */
  customerId: string
  consentPhone: string
  consentText: string
  consentEmail: string
  consentLetter: string
}

export const emptyHolder = (): HolderTexts => ({
  ...{ name: '', phone: '', email: '', customerId: '' },
  ...{ consentPhone: '', consentText: '', consentEmail: '', consentLetter: '' },
})

const CONSENTS = [
  { key: 'consentPhone', channel: 'phone', label: 'by phone' },
  { key: 'consentText', channel: 'text', label: 'by text message' },
  { key: 'consentEmail', channel: 'email', label: 'by email' },
  { key: 'consentLetter', channel: 'letter', label: 'by letter' },
] as const

/** Who is the new customer, as the command wants it. */
export function holderOf(texts: HolderTexts): Holder {
  if (texts.customerId) return { kind: 'known', customerId: texts.customerId }
  const consents = CONSENTS.filter((one) => texts[one.key] === 'yes').map((one) => one.channel)
  return { kind: 'new', name: texts.name, phone: texts.phone, email: texts.email.trim(), consents }
}

/** A customer by name: one of the firm's, offered while typing, or a new one with how to reach them and what they agreed to. */
export function HolderFields({ form }: { form: ReturnType<typeof useFields<HolderTexts>> }) {
  const { api } = useSession()
  const { values, set, field } = form
  const q = values.name.trim()
  const known = useQuery(api.sites.customers.queryOptions({ input: { q }, enabled: q.length >= 3 && values.customerId === '' }))
  if (values.customerId)
    return (
      <p className="flex flex-wrap items-center gap-3">
        <span>
          {values.name}, <span className="text-soft">an existing customer</span>
        </span>
        <Button kind="quiet" onClick={() => set({ customerId: '' })}>
          Someone else
        </Button>
      </p>
    )
  return (
    <>
      <TextInput label="Customer" hint="Who pays" required maxLength={160} {...field('name')} />
      {known.data && known.data.length > 0 ? (
        <ul aria-label="Customers with a name like this" className="-mt-2 border-l-2 border-line pl-3">
          {known.data.slice(0, 5).map((one) => (
            <li key={one.id}>
              <Button kind="quiet" onClick={() => set({ customerId: one.id, name: one.name })}>
                Choose {one.name}
                {one.reference ? `, ${one.reference}` : ''}, {one.sites === 1 ? 'one site' : `${one.sites} sites`}
              </Button>
            </li>
          ))}
        </ul>
      ) : null}
      <TextInput label="Phone" type="tel" maxLength={40} {...field('phone')} />
      <TextInput label="Email" type="email" maxLength={160} {...field('email')} />
      <fieldset className="flex flex-col">
        <legend className="mb-1 font-medium">OK to contact by</legend>
        {CONSENTS.map((one) => (
          <Checkbox
            key={one.key}
            label={one.label}
            checked={values[one.key] === 'yes'}
            onChange={(event) => set({ [one.key]: event.target.checked ? 'yes' : '' })}
          />
        ))}
        <span className="text-small text-soft">Unchecked means not asked, so no reminder goes out that way.</span>
      </fieldset>
    </>
  )
}
