'use client'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import { browserSupportsWebAuthn, type PublicKeyCredentialCreationOptionsJSON, startRegistration } from '@simplewebauthn/browser'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { type FormEvent, useEffect, useState } from 'react'
import { deviceWords, sinceWords } from '@/client/device-words'
import { readFailure } from '@/client/failure'
import { useOwnAccount } from '@/client/own-account'
import { useSession } from '@/client/providers'
import { useFields } from '@/client/use-fields'
import { useToday } from '@/client/use-today'

/** One's passkeys: added after the password, by what the device asks; removed at once. */
export function Passkeys() {
  const { api } = useSession()
  const words = useWords('ownAccount')
  const queries = useQueryClient()
  const own = useQuery(api.session.passkeys.queryOptions())
  const again = () => queries.invalidateQueries({ queryKey: api.session.passkeys.key() })
  const remove = useMutation(api.session.removePasskey.mutationOptions({ onSuccess: again }))
  const failed = own.error ?? remove.error
  return (
    <Section title={words('passkeys')}>
      <p className="mb-3 max-w-[75ch]">{words('passkeysLead')}</p>
      {failed ? <Problem happened={readFailure(failed).message} onRetry={() => void own.refetch()} /> : null}
      {own.data?.length === 0 ? <p className="mb-3 text-soft">{words('noPasskeys')}</p> : null}
      <ul className="mb-4">
        {own.data?.map((one) => (
          <li key={one.id} className="flex flex-wrap items-center justify-between gap-4 border-b border-line py-3">
            <PasskeyWords {...one} />
            <Button busy={remove.isPending} onClick={() => remove.mutate({ passkeyId: one.id })}>
              {words('removePasskey')}
            </Button>
          </li>
        ))}
      </ul>
      {own.data && own.data.length > 0 ? <p className="mb-3 max-w-[75ch] text-soft">{words('passkeyOld')}</p> : null}
      <AddPasskey onAdded={again} />
    </Section>
  )
}

type Shown = { device: Parameters<typeof deviceWords>[0]; keptBy: string | null; addedAt: string; lastUsedAt: string | null }

/** A passkey in words, as a session is. */
function PasskeyWords({ device, keptBy, addedAt, lastUsedAt }: Shown) {
  const { me } = useSession()
  const today = useToday()
  const words = useWords('ownAccount')
  const since = (instant: string) => sinceWords(instant, today, me.company, words)
  return (
    <span>
      {[deviceWords(device, words), keptBy && words('passkeyKeptBy', { program: keptBy })].filter(Boolean).join(', ')}
      <span className="block text-small text-soft">
        {words('passkeyAdded', { since: since(addedAt) })};{' '}
        {lastUsedAt ? words('passkeyUsed', { since: since(lastUsedAt) }) : words('passkeyUnused')}
      </span>
    </span>
  )
}

function AddPasskey({ onAdded }: { onAdded: () => void }) {
  const words = useWords('ownAccount')
  const { values, set, field } = useFields(() => ({ password: '' }))
  const { send, problem, busy } = useOwnAccount()
  const [stopped, setStopped] = useState<string>()
  const [done, setDone] = useState(false)
  const [able, setAble] = useState(true)
  useEffect(() => setAble(browserSupportsWebAuthn()), [])
  async function submit(event: FormEvent) {
    event.preventDefault()
    setDone(false)
    setStopped(undefined)
    const optionsJSON = await send<PublicKeyCredentialCreationOptionsJSON>('passkey/begin', values)
    if (!optionsJSON) return
    try {
      const response = await startRegistration({ optionsJSON })
      if (!(await send('passkey/verify-registration', { response }))) return
    } catch (error) {
      return setStopped(words(error instanceof Error && error.name === 'InvalidStateError' ? 'passkeyHere' : 'passkeyStopped'))
    }
    set({ password: '' })
    setDone(true)
    onAdded()
  }
  if (!able) return <p className="text-soft">{words('passkeysCannot')}</p>
  const said = stopped ?? problem
  return (
    <form onSubmit={submit} className="flex max-w-md flex-col gap-4">
      <TextInput label={words('passwordForPasskey')} type="password" required autoComplete="current-password" {...field('password')} />
      {said ? <Problem happened={said} /> : null}
      {done ? <Notice kind="done">{words('passkeyDone')}</Notice> : null}
      <div>
        <Button type="submit" busy={busy} busyLabel={words('addingPasskey')}>
          {words('addPasskey')}
        </Button>
      </div>
    </form>
  )
}
