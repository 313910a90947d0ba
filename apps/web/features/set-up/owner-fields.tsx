'use client'
import { NewSignInFields } from '@/client/new-sign-in-fields'
import type { useFields } from '@/client/use-fields'

type Props = {
  form: ReturnType<typeof useFields<{ name: string; email: string; password: string }>>
  person: { name: string; email: string } | null
  fixedEmail: boolean
}

/** Who owns the company: whoever is signed in, or someone new. */
export function OwnerFields({ form, person, fixedEmail }: Props) {
  return (
    <fieldset className="flex flex-col gap-4">
      <legend className="mb-3 w-full border-t border-ink pt-3 text-h2 font-semibold">You, the owner</legend>
      {person ? (
        <p>
          You’re signed in as <strong>{person.name}</strong> ({person.email}). The new company is added to your sign-in.
        </p>
      ) : (
        <NewSignInFields form={form} fixedEmail={fixedEmail} />
      )}
    </fieldset>
  )
}
