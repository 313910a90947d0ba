'use client'
import type { Settings } from '@almanac/contract/firm'
import { Button } from '@almanac/ui/button'
import { Section } from '@almanac/ui/section'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { figureName, figureWords } from './figure-words.ts'

const SHARED =
  'What other firms get is a summary of your fit: eight figures that say how long beds last and what water does to them, and how sure each is. Never a record: no customer, site, bed, water supply or date, and not your name.'

/** Learning together with other firms: off unless the owner switches it on, with what is shared said first. */
export function PoolPart({ settings }: { settings: Settings }) {
  const [asking, setAsking] = useState(false)
  const on = settings.poolFits
  return (
    <Section
      title="Learning together with other firms"
      actions={<Button onClick={() => setAsking(true)}>{on ? 'Stop learning together' : 'Learn together'}</Button>}
    >
      <p className="max-w-[75ch]">
        <strong>{on ? 'On.' : 'Off.'}</strong>{' '}
        {on
          ? 'Your fit also starts from the fits of the other firms that chose this, and they start from yours.'
          : 'Your forecasts learn from your own records alone, and no other firm learns from yours.'}
      </p>
      <p className="mt-1 max-w-[75ch] text-soft">{SHARED}</p>
      {asking ? <AskPool settings={settings} onClose={() => setAsking(false)} /> : null}
    </Section>
  )
}

function AskPool({ settings, onClose }: { settings: Settings; onClose: () => void }) {
  const { api, me } = useSession()
  const display = me.company
  const [seen] = useState(settings)
  const change = useCommand(api.firm.changeSettings.mutationOptions(), { onDone: onClose })
  const send = (over: Settings) => change.send({ ...over, poolFits: !seen.poolFits, note: null })
  return (
    <FormDialog
      title={seen.poolFits ? 'Stop learning together' : 'Learn together with other firms'}
      lead={
        seen.poolFits
          ? 'Other firms no longer get the summary of your fit, and theirs no longer counts in yours. Your forecasts are made anew within minutes.'
          : `${SHARED} In return your fit starts from theirs; the fewer of your own beds have failed, the more that helps. With only one other firm taking part, its summary could be worked back to some degree, and so could yours. You can switch it off at any time.`
      }
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(settings)}
      busy={change.isPending}
      error={change.error}
      saveLabel={seen.poolFits ? 'Stop' : 'Switch it on'}
      names={{ poolFits: figureName('poolFits', display) }}
      show={(name, value) => figureWords(name, value, display)}
    >
      {null}
    </FormDialog>
  )
}
