'use client'
import { doseWordsIn } from '@almanac/softener/setting/card-facts'
import type { DoseFault, DoseFigures } from '@almanac/softener/setting/dose-figures'
import type { SettingFigures } from '@almanac/softener/setting/setting-figures'
import { Button } from '@almanac/ui/button'
import { DosePlot } from '@almanac/ui/dose-plot'
import { Select } from '@almanac/ui/select'
import { TextLink } from '@almanac/ui/text-link'
import { lbFt3ToGL } from '@almanac/units/concentration'
import { formatWaterGal, formatWeightLb } from '@almanac/units/format'
import { showNumber } from '@almanac/units/format-number'
import { formatWholeMoney } from '@almanac/units/money'
import { readNumber } from '@almanac/units/read-number'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { usePermission, useSession } from '@/client/providers'
import type { CardChanges } from '@/client/settings-card/card-changes'

type Props = { setting: SettingFigures; doseChanged: boolean; change: (change: Partial<CardChanges>) => void }

/** What each salt dose costs a year, as a plot and a table, with the way to set another. */
export function DosePart({ setting, doseChanged, change }: Props) {
  const { me } = useSession()
  const card = useWords('card')
  const display = me.company
  const mayPrice = usePermission('manage:company')
  const { doses, chosen, best } = setting
  const priced = doses[0]?.costMinorYear !== null
  const dose = doseWordsIn(display)
  const amount = (value: number) => (priced ? formatWholeMoney(value, display) : formatWeightLb(value, display))
  const amounts = doses.map((one) => one.costMinorYear ?? one.saltLbYear)
  const faultWords = (fault: DoseFault | null) => (fault ? card(`fault/${fault}`) : null)
  const doseWords = (one: DoseFigures, at: number) => {
    const said = { dose: dose(one.saltLbFt3), amount: amount(amounts[at] ?? 0), days: showNumber(one.intervalDays, 1, display) ?? '' }
    return one.fault ? card('plot/doseFault', { ...said, fault: card(`fault/${one.fault}`) }) : card('plot/dose', said)
  }
  const bare = (saltLbFt3: number) =>
    showNumber(display.unitSystem === 'us' ? saltLbFt3 : lbFt3ToGL(saltLbFt3), display.unitSystem === 'us' ? 1 : 0, display) ?? ''
  return (
    <>
      <DosePlot
        card={card}
        title={card(priced ? 'plot/cost' : 'plot/salt')}
        doses={doses.map((one, at) => ({
          dose: one.saltLbFt3,
          amount: amounts[at] ?? 0,
          words: doseWords(one, at),
          fault: faultWords(one.fault),
        }))}
        chosen={chosen}
        best={best}
        axis={card('plot/axis', { unit: card(`plot/${display.unitSystem}`) })}
        doseText={bare}
        amountText={amount}
        table={{
          heads: [
            card('head/dose'),
            ...(priced ? [card('head/cost')] : []),
            card('head/salt'),
            card('head/water'),
            card('head/every'),
            'gr/lb',
            '',
          ],
          rows: doses.map((one, at) => [
            dose(one.saltLbFt3),
            ...(priced ? [amount(amounts[at] ?? 0)] : []),
            formatWeightLb(one.saltLbYear, display),
            formatWaterGal(one.waterGalYear, display),
            card('days', { days: showNumber(one.intervalDays, 1, display) ?? '' }),
            showNumber(one.grPerLb, 0, display) ?? '',
            [at === chosen ? card('plot/set') : null, at === best ? card('plot/best') : null, faultWords(one.fault)]
              .filter(Boolean)
              .join(', '),
          ]),
        }}
      />
      <div className="flex flex-wrap items-end gap-4">
        <Select
          label={card('setAnother')}
          value={String(chosen)}
          choices={doses.map((one, at) => ({
            value: String(at),
            label: card(at === best ? 'bestChoice' : 'doseChoice', { dose: dose(one.saltLbFt3), amount: amount(amounts[at] ?? 0) }),
          }))}
          onChange={(event) => change({ doseLbFt3: doses[readNumber(event.target.value) ?? -1]?.saltLbFt3 ?? null })}
        />
        {doseChanged ? <Button onClick={() => change({ doseLbFt3: null })}>{card('backToBest')}</Button> : null}
      </div>
      {priced ? null : (
        <p className="mt-3 max-w-[60ch] text-small text-soft">
          {card('noPrice')}{' '}
          {mayPrice ? (
            <TextLink href="/firm" link={Link}>
              {card('setPrice')}
            </TextLink>
          ) : (
            card('ownerSetsPrice')
          )}
        </p>
      )}
    </>
  )
}
