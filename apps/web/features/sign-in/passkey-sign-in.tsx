'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useWords } from '@almanac/words/use-words'
import { browserSupportsWebAuthn, type PublicKeyCredentialRequestOptionsJSON, startAuthentication } from '@simplewebauthn/browser'
import { useEffect, useState } from 'react'

type Said = { code?: string; message?: string }

/** Signs in with a passkey: nothing is typed, the device asks. Nothing where the browser has none. */
export function PasskeySignIn({ onDone }: { onDone: () => void }) {
  const words = useWords('signIn')
  const [able, setAble] = useState(false)
  const [problem, setProblem] = useState<string>()
  const [busy, setBusy] = useState(false)
  useEffect(() => setAble(browserSupportsWebAuthn()), [])

  /** Why it did not sign anybody in; undefined where it did. */
  async function attempt(): Promise<string | undefined> {
    const asked = await fetch('/api/auth/passkey/generate-authenticate-options')
    const options = (await asked.json()) as PublicKeyCredentialRequestOptionsJSON & Said
    if (!asked.ok) return asked.status === 429 ? options.message : words('notNow')
    // The server lets in only where the device asked for a PIN, a finger or a face.
    const response = await startAuthentication({ optionsJSON: { ...options, userVerification: 'required' } }).catch(() => null)
    if (!response) return words('passkeyStopped')
    const answer = await fetch('/api/auth/passkey/verify-authentication', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ response }),
    })
    if (answer.ok) return undefined
    const said = (await answer.json().catch(() => ({}))) as Said
    if (said.code === 'PASSKEY_NOT_FOUND') return words('passkeyGone')
    const saysItself = said.code === 'DEMO_ELSEWHERE' || said.code === 'PASSKEY_UNVERIFIED' || answer.status === 429
    return (saysItself ? said.message : undefined) ?? words('passkeyStopped')
  }

  async function press() {
    setBusy(true)
    setProblem(undefined)
    const why = await attempt().catch(() => words('unreachable'))
    if (why === undefined) return onDone()
    setProblem(why)
    setBusy(false)
  }

  if (!able) return null
  return (
    <>
      {problem ? <Problem happened={problem} /> : null}
      <Button busy={busy} busyLabel={words('signingIn')} onClick={() => void press()}>
        {words('passkey')}
      </Button>
    </>
  )
}
