'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import { type FormEvent, useState } from 'react'
import { useOwnAccount } from '@/client/own-account'
import { useSession } from '@/client/providers'
import { useFields } from '@/client/use-fields'
import { QrCode } from './qr-code.tsx'

type Begun = { totpURI: string; backupCodes: string[] }

/** A code of an authenticator app as a second step at sign-in: turned on with a first code, off with the password. */
export function SecondStepPart() {
  const { me } = useSession()
  const words = useWords('ownAccount')
  const { values, set, field } = useFields(() => ({ password: '', code: '' }))
  const { send, problem, busy } = useOwnAccount()
  const [begun, setBegun] = useState<Begun | null>(null)
  const on = me.person.secondStep
  async function submit(event: FormEvent) {
    event.preventDefault()
    if (begun) {
      if (await send('two-factor/verify-totp', { code: values.code })) location.reload()
      return
    }
    const said = await send<Begun>(on ? 'two-factor/disable' : 'two-factor/enable', { password: values.password })
    if (!said) return
    set({ password: '' })
    if (on) location.reload()
    else setBegun(said)
  }
  return (
    <Section title={words('second')}>
      <p className="mb-3 max-w-[75ch]">
        <strong>{words(on ? 'on' : 'off')}</strong> {words(on ? 'onLead' : 'offLead')}
      </p>
      <form onSubmit={submit} className="flex max-w-md flex-col gap-4">
        {begun ? (
          <Steps begun={begun} />
        ) : (
          <TextInput label={words('yourPassword')} type="password" required autoComplete="current-password" {...field('password')} />
        )}
        {begun ? (
          <TextInput label={words('code')} required maxLength={10} autoComplete="one-time-code" inputMode="numeric" {...field('code')} />
        ) : null}
        {problem ? <Problem happened={problem} /> : null}
        <div>
          <Button type="submit" busy={busy}>
            {words(begun ? 'turnOn' : on ? 'turnOff' : 'setUp')}
          </Button>
        </div>
      </form>
    </Section>
  )
}

/** What to scan, and what to keep. */
function Steps({ begun }: { begun: Begun }) {
  const words = useWords('ownAccount')
  return (
    <>
      <p>{words('scan')}</p>
      <QrCode text={begun.totpURI} />
      <p className="break-all font-medium" data-secret>
        {new URL(begun.totpURI).searchParams.get('secret')}
      </p>
      <p>{words('keepCodes')}</p>
      <ul className="grid grid-cols-2 gap-x-4 font-medium">
        {begun.backupCodes.map((code) => (
          <li key={code}>{code}</li>
        ))}
      </ul>
    </>
  )
}
