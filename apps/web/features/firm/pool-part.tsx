'use client'
import type { Settings } from '@almanac/contract/firm'
import { Button } from '@almanac/ui/button'
import { Section } from '@almanac/ui/section'
import { useState } from 'react'
import { figureName, figureWords } from '@/client/figure-words'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

const SHARED =
  'Other companies get a summary: eight numbers for how long beds last and what water does to them, and how sure each is. They never get a record: no customer, site, bed, water supply, date or your name.'

/** Learn together with other companies: off unless the owner switches it on, with what is shared said first. */
export function PoolPart({ settings }: { settings: Settings }) {
  const [asking, setAsking] = useState(false)
  const on = settings.poolFits
  return (
    <Section
      title="Learn together with other companies"
      actions={<Button onClick={() => setAsking(true)}>{on ? 'Stop learning together' : 'Learn together'}</Button>}
    >
      <p className="max-w-[75ch]">
        <strong>{on ? 'On.' : 'Off.'}</strong>{' '}
        {on
          ? 'Your forecasts also learn from the other companies that turned this on, and theirs learn from yours.'
          : 'Your forecasts learn from your own records only, and no other company learns from yours.'}
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
      title={seen.poolFits ? 'Stop learning together' : 'Learn together with other companies'}
      lead={
        seen.poolFits
          ? 'Other companies stop getting your summary, and you stop using theirs. Your forecasts are updated within minutes.'
          : `${SHARED} In return your forecasts learn from theirs. The fewer of your own beds have failed, the more that helps. With only one other company taking part, someone could partly work out its numbers from the summary, and yours too. You can turn it off at any time.`
      }
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(settings)}
      busy={change.isPending}
      error={change.error}
      saveLabel={seen.poolFits ? 'Stop' : 'Turn it on'}
      names={{ poolFits: figureName('poolFits', display) }}
      show={(name, value) => figureWords(name, value, display)}
    >
      {null}
    </FormDialog>
  )
}
