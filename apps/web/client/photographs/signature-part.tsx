'use client'
import { type Signing, signings } from '@almanac/records/signing'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { Notice } from '@almanac/ui/notice'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { KeptImage } from './photograph-part.tsx'
import { sumOf } from './picture-sum.ts'
import { type Drawn, SignaturePad } from './signature-pad.tsx'
import { usePictures } from './use-pictures.ts'

/** The customer signs on the glass with their name typed, or it is said that nobody did. The last word counts. */
export function SignaturePart({ visitId }: { visitId: string }) {
  const { rows, add } = usePictures()
  const words = useWords('photographs')
  const [answer, setAnswer] = useState<Signing | ''>('')
  const [name, setName] = useState('')
  const [drawn, setDrawn] = useState<Drawn | null>(null)
  const [tried, setTried] = useState(false)
  const [failed, setFailed] = useState(false)
  const said = (rows ?? []).filter((one) => one.visitId === visitId && one.taken.is !== 'photograph').at(-1)
  const keep = async (taken: Parameters<typeof add>[1]) => {
    setFailed(false)
    try {
      await add(visitId, taken)
      setAnswer('')
      setTried(false)
    } catch {
      setFailed(true)
    }
  }
  const choose = (value: string) => {
    const chosen = signings.find((one) => one === value)
    if (chosen === 'signed') setAnswer(chosen)
    else if (chosen) void keep({ is: 'unsigned', answer: chosen })
  }
  const sign = async () => {
    setTried(true)
    const bytes = name.trim() ? await drawn?.picture() : null
    if (bytes) await keep({ is: 'signature', name: name.trim(), bytes, sha256: sumOf(bytes) })
  }
  const current = answer || (said?.taken.is === 'unsigned' ? said.taken.answer : said ? 'signed' : '')
  const signed = said?.taken.is === 'signature' && answer === '' ? said.taken : null
  return (
    <div className="flex flex-col gap-4">
      <ChoiceGroup
        label={words('signing')}
        name="signing"
        choices={signings.map((value) => ({ value, label: words(`signing/${value}`) }))}
        value={current}
        onChange={choose}
      />
      {signed ? (
        <div>
          <KeptImage bytes={signed.bytes} alt={words('signatureOf', { name: signed.name })} className="h-20 rounded-sheet bg-[#ffffff]" />
          <p className="text-small text-soft">
            {words('signatureOf', { name: signed.name })} · {said?.refused ?? words(said?.sent ? 'sent' : 'waits')}
          </p>
          <Button onClick={() => setAnswer('signed')}>{words('signAgain')}</Button>
        </div>
      ) : null}
      {answer === 'signed' ? (
        <>
          <TextInput
            label={words('name')}
            value={name}
            autoComplete="off"
            maxLength={120}
            error={tried && !name.trim() ? words('noName') : undefined}
            onChange={(event) => setName(event.target.value)}
          />
          <SignaturePad label={words('pad')} clear={words('clear')} onDrawn={setDrawn} />
          {tried && name.trim() && !drawn ? <Notice kind="mind">{words('emptyPad')}</Notice> : null}
          <Button kind="ink" onClick={() => void sign()}>
            {words('keepSignature')}
          </Button>
        </>
      ) : null}
      {failed ? <Notice kind="mind">{words('cannotKeep')}</Notice> : null}
    </div>
  )
}
