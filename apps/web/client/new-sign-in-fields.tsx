'use client'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import type { useFields } from './use-fields.ts'

type Props = { form: ReturnType<typeof useFields<{ name: string; email: string; password: string }>>; fixedEmail: boolean }

/** Name, email and password of someone who signs in here for the first time. */
export function NewSignInFields({ form: { field }, fixedEmail }: Props) {
  const words = useWords('join')
  return (
    <>
      <TextInput label={words('name')} required maxLength={80} autoComplete="name" {...field('name')} />
      <TextInput
        label={words('email')}
        type="email"
        hint={words(fixedEmail ? 'emailFixed' : 'emailHint')}
        required
        readOnly={fixedEmail}
        maxLength={254}
        autoComplete="username"
        {...field('email')}
      />
      <NewPasswordField label={words('password')} {...field('password')} />
    </>
  )
}

/** A new password, with the rules that the page can tell beforehand; the server judges the rest. */
export function NewPasswordField({
  label,
  ...field
}: {
  label: string
  value: string
  onChange: (event: { target: { value: string } }) => void
}) {
  const words = useWords('join')
  return (
    <TextInput
      label={label}
      type="password"
      hint={words('passwordHint')}
      required
      minLength={10}
      maxLength={128}
      autoComplete="new-password"
      {...field}
    />
  )
}
