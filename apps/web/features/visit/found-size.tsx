import { foundSizes } from '@almanac/records/procedure-ask'
import { FOUND_AS } from '@almanac/service-rules/close-out/tank-as-found'
import { useWords } from '@almanac/words/use-words'
import { AmountField } from '@/client/amount-field'
import { useSession } from '@/client/providers'
import type { DraftHandle } from './use-draft.ts'
import { readOnSite, unitOrFirst } from './visit-amounts.ts'

/** The tank's size where it is another than on record. */
export function FoundSize({ handle }: { handle: DraftHandle }) {
  const { me } = useSession()
  const words = useWords('visit')
  const asks = useWords('asks')
  const { draft, change } = handle
  const by = { locale: me.company.locale, units: me.company.unitSystem, tank: null }
  return (
    <fieldset className="mt-6 flex flex-col gap-4 border-t border-line pt-4">
      <legend className="font-semibold">{words('otherTank')}</legend>
      <p className="text-small text-soft">{words('otherTankHint')}</p>
      {foundSizes.map((id) => {
        const kind = FOUND_AS[id]
        const answer = draft.answers[id]
        return (
          <AmountField
            key={id}
            label={asks(id)}
            kind={kind}
            value={{ text: answer?.text ?? '', unit: unitOrFirst(kind, answer?.unit, by.units), why: answer?.why ?? '' }}
            onChange={({ text, unit, why }) => {
              const reading = readOnSite(kind, text, unit, by)
              const read = reading.state === 'read' ? { value: reading.value, unit: reading.entered.unit } : { value: null, unit }
              const at = new Date().toISOString()
              change({ answers: { ...draft.answers, [id]: { text, ...read, at, ...(why === '' ? {} : { why }) } } })
            }}
          />
        )
      })}
    </fieldset>
  )
}
