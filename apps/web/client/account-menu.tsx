'use client'
import { oneOf } from '@almanac/records/choices'
import { type Language, languages, languageWords, unreviewedLanguages } from '@almanac/records/language'
import { Checkbox } from '@almanac/ui/checkbox'
import { Select } from '@almanac/ui/select'
import { useWords } from '@almanac/words/use-words'
import { useMutation } from '@tanstack/react-query'
import Link from 'next/link'
import { useLeaving } from './field/leaving.tsx'
import { useSlashKey } from './find/slash-key.ts'
import { useSession } from './providers.tsx'

/** Signs this session out; afterwards the sign-in page leaves nothing of the company to be seen. */
const SIGN_OUT = {
  leave: async () => {
    const { ok, status } = await fetch('/api/auth/sign-out', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{}',
    })
    if (!ok) throw new Error(`signing out was answered with ${status}`)
  },
  after: () => location.assign('/sign-in'),
}

/** Who is signed in and where; another company for those who are in several; the language they read; sessions and signing out. */
export function AccountActions() {
  const { me, api } = useSession()
  const words = useWords('account')
  const slash = useSlashKey()
  const others = me.companies.filter((one) => one.id !== me.company.id)
  const change = useMutation(api.session.switchCompany.mutationOptions())
  const failure = useWords('failure')
  const leaving = useLeaving()
  const read = useMutation(api.session.setLanguage.mutationOptions({ onSuccess: () => location.reload() }))
  const nameOf = (language: Language) =>
    unreviewedLanguages.includes(language) ? words('unreviewed', { language: languageWords[language] }) : languageWords[language]
  return (
    <div className="flex flex-col gap-1 p-2 whitespace-normal">
      <p className="text-small text-soft">
        {me.company.name} · {words(me.role)}
        <span className="block break-words">{me.person.email}</span>
      </p>
      {others.map((one) => (
        <button
          key={one.id}
          type="button"
          className="min-h-control text-left hover:underline"
          onClick={() => void leaving.go({ leave: () => change.mutateAsync({ companyId: one.id }), after: () => location.assign('/') })}
        >
          {words('goTo', { company: one.name })} <span className="text-small text-soft">{words('asRole', { role: words(one.role) })}</span>
        </button>
      ))}
      <Select
        label={words('language')}
        choices={[{ value: '', label: words('companyLanguage') }, ...languages.map((one) => ({ value: one, label: nameOf(one) }))]}
        value={me.person.language ?? ''}
        disabled={read.isPending}
        onChange={(event) => read.mutate({ language: oneOf(languages, event.target.value) })}
      />
      {(change.error ?? read.error) ? <p role="alert">{(change.error ?? read.error)?.message}</p> : null}
      <Checkbox label={words('slashKey')} checked={slash.on} onChange={(event) => slash.set(event.target.checked)} />
      <Link href="/sessions" className="inline-flex min-h-control items-center hover:underline">
        {words('yourAccount')}
      </Link>
      <button type="button" className="min-h-control text-left hover:underline" onClick={() => void leaving.go(SIGN_OUT)}>
        {words('signOut')}
      </button>
      {leaving.failed && !change.error ? <p role="alert">{failure('unreachable')}</p> : null}
      {leaving.question}
    </div>
  )
}
