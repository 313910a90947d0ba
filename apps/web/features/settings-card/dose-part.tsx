'use client'
import { doseWordsIn } from '@almanac/softener/setting/card-facts'
import type { DoseFault } from '@almanac/softener/setting/dose-figures'
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
import Link from 'next/link'
import { usePermission, useSession } from '@/client/providers'
import type { CardChanges } from './card-address.ts'

const FAULTS: Record<DoseFault, string> = {
  leaks: 'lets too much hardness through',
  'too-often': 'does not last a day',
  'iron-stays': 'leaves iron in the bed',
}

type Props = { setting: SettingFigures; doseChanged: boolean; change: (change: Partial<CardChanges>) => void }

/** What each salt dose costs a year, as a plot and a table, with the way to set another. */
export function DosePart({ setting, doseChanged, change }: Props) {
  const { me } = useSession()
  const display = me.company
  const mayPrice = usePermission('manage:company')
  const { doses, chosen, best } = setting
  const priced = doses[0]?.costMinorYear !== null
  const dose = doseWordsIn(display)
  const amount = (value: number) => (priced ? formatWholeMoney(value, display) : formatWeightLb(value, display))
  const amounts = doses.map((one) => one.costMinorYear ?? one.saltLbYear)
  const faultWords = (fault: DoseFault | null) => (fault ? FAULTS[fault] : null)
  const bare = (saltLbFt3: number) =>
    showNumber(display.unitSystem === 'us' ? saltLbFt3 : lbFt3ToGL(saltLbFt3), display.unitSystem === 'us' ? 1 : 0, display) ?? ''
  return (
    <>
      <DosePlot
        title={priced ? 'Salt and water, cost a year by dose' : 'Salt a year by dose'}
        doses={doses.map((one, at) => ({
          dose: one.saltLbFt3,
          amount: amounts[at] ?? 0,
          words: `${dose(one.saltLbFt3)}: ${amount(amounts[at] ?? 0)} a year, regenerates every ${showNumber(one.intervalDays, 1, display)} days${one.fault ? `; ${FAULTS[one.fault]}` : ''}`,
          fault: faultWords(one.fault),
        }))}
        chosen={chosen}
        best={best}
        axis={display.unitSystem === 'us' ? 'Salt, lb for each ft³ of resin' : 'Salt, g for each liter of resin'}
        doseText={bare}
        amountText={amount}
        table={{
          heads: ['Dose', ...(priced ? ['Cost a year'] : []), 'Salt a year', 'Water a year', 'Every', 'gr/lb', ''],
          rows: doses.map((one, at) => [
            dose(one.saltLbFt3),
            ...(priced ? [amount(amounts[at] ?? 0)] : []),
            formatWeightLb(one.saltLbYear, display),
            formatWaterGal(one.waterGalYear, display),
            `${showNumber(one.intervalDays, 1, display)} days`,
            showNumber(one.grPerLb, 0, display) ?? '',
            [at === chosen ? 'set' : null, at === best ? 'best' : null, faultWords(one.fault)].filter(Boolean).join(', '),
          ]),
        }}
      />
      <div className="flex flex-wrap items-end gap-4">
        <Select
          label="Set another dose"
          value={String(chosen)}
          choices={doses.map((one, at) => ({
            value: String(at),
            label: `${dose(one.saltLbFt3)}, ${amount(amounts[at] ?? 0)} a year${at === best ? ' (best)' : ''}`,
          }))}
          onChange={(event) => change({ doseLbFt3: doses[readNumber(event.target.value) ?? -1]?.saltLbFt3 ?? null })}
        />
        {doseChanged ? <Button onClick={() => change({ doseLbFt3: null })}>Back to the best</Button> : null}
      </div>
      {priced ? null : (
        <p className="mt-3 max-w-[60ch] text-small text-soft">
          No salt price is set, so doses are compared by how much salt they use.{' '}
          {mayPrice ? (
            <TextLink href="/firm" link={Link}>
              Set the price under Figures
            </TextLink>
          ) : (
            'The owner can set it under Company settings.'
          )}
        </p>
      )}
    </>
  )
}
