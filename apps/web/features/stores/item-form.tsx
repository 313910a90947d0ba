'use client'
import type { StockRow } from '@almanac/contract/stores'
import { oneOf } from '@almanac/records/choices'
import { type ResinKindId, resinKinds, resinKindWords } from '@almanac/records/resin-kind'
import { type StockKind, type StockUnit, stockKinds, unitsOfStock } from '@almanac/records/stock'
import { Button } from '@almanac/ui/button'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { stockRule } from '@almanac/units/amount-kinds'
import { inToMm } from '@almanac/units/length'
import { numberText } from '@almanac/units/read-number'
import { ft3ToL } from '@almanac/units/volume'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useLocale } from '@/client/use-locale'
import { useMoney } from '@/client/use-money'

const NAMES = {
  name: 'Name',
  bagFt3: 'One bag holds',
  resinKind: 'Resin',
  tubeOdIn: 'Outside diameter',
  priceMinor: 'Price',
  leadDays: 'Lead time',
}
const MISSING = 'Kits find it by this.'
type Typed = 'bag' | 'tube' | 'onHand' | 'price' | 'leadDays'

/** Adds an item to the stores, or changes what one is called, holds and costs. Its kind and unit are chosen once. */
export function ItemForm({ item, onClose }: { item: StockRow | null; onClose: () => void }) {
  const { api, me } = useSession()
  const us = me.company.unitSystem === 'us'
  const locale = useLocale()
  const money = useMoney()
  const [seen] = useState(item)
  const words = useWords('stores')
  const { values, field } = useFields(() => ({
    name: seen?.name ?? '',
    kind: seen?.kind ?? 'resin',
    unit: seen?.unit ?? '',
    resinKind: seen?.resinKind ?? 'gel-8',
  }))
  const kind: StockKind = oneOf(stockKinds, values.kind) ?? 'other'
  const units = unitsOfStock[kind]
  const unit: StockUnit = oneOf(units, values.unit) ?? units[0]
  const shownUnit = seen?.unit ?? unit
  const text = (value: number | null | undefined, decimals: number) => ({ text: value == null ? '' : numberText(value, locale, decimals) })
  const amounts = useAmounts<Typed>(
    { bag: 'figureVolume', tube: 'figureDiameter', onHand: stockRule(shownUnit), price: money.rule, leadDays: 'leadDays' },
    {
      required: kind === 'resin' ? ['bag', 'leadDays'] : kind === 'tube' ? ['tube', 'leadDays'] : ['leadDays'],
      start: {
        bag: text(seen?.bagFt3 == null ? null : us ? seen.bagFt3 : ft3ToL(seen.bagFt3), 4),
        tube: text(seen?.tubeOdIn == null ? null : us ? seen.tubeOdIn : inToMm(seen.tubeOdIn), 4),
        price: { text: money.text(seen?.priceMinor ?? null) },
        leadDays: { text: String(seen?.leadDays ?? 14) },
      },
    },
  )
  const add = useCommand(api.stores.addItem.mutationOptions(), { onDone: onClose })
  const change = useCommand(api.stores.changeItem.mutationOptions(), { onDone: onClose })
  const archive = useCommand(api.stores.archiveItem.mutationOptions(), { onDone: onClose })
  const send = (over: StockRow | null) => {
    // What the form doesn't show is left out.
    const hidden: Partial<Record<Typed, boolean>> = { bag: kind !== 'resin', tube: kind !== 'tube', onHand: over !== null }
    const read = amounts.read((Object.keys(hidden) as Typed[]).filter((one) => hidden[one]))
    if (!read?.leadDays) return
    const body = {
      name: values.name,
      bagFt3: read.bag?.value ?? null,
      resinKind: kind === 'resin' ? (values.resinKind as ResinKindId) : null,
      tubeOdIn: read.tube?.value ?? null,
      priceMinor: read.price && money.minorOf(read.price.value),
      leadDays: read.leadDays.value,
    }
    if (over) change.send({ ...body, stockItemId: over.id, version: over.version })
    else add.send({ ...body, kind, unit, onHand: read.onHand?.value ?? 0, why: read.onHand?.why ?? undefined })
  }
  return (
    <FormDialog
      title={seen ? seen.name : 'Add an item'}
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(item)}
      busy={add.isPending || change.isPending || archive.isPending}
      error={add.error ?? change.error ?? archive.error}
      names={NAMES}
    >
      <TextInput label={NAMES.name} required maxLength={120} {...field('name')} />
      {seen ? null : (
        <Select label="Kind" {...field('kind')} choices={stockKinds.map((value) => ({ value, label: words(`kind/${value}`) }))} />
      )}
      {!seen && units.length > 1 ? (
        <Select label="Counted by" {...field('unit')} value={unit} choices={units.map((value) => ({ value, label: value }))} />
      ) : null}
      {kind === 'resin' ? (
        <>
          <Select
            label={NAMES.resinKind}
            {...field('resinKind')}
            choices={resinKinds.map((value) => ({ value, label: resinKindWords[value] }))}
          />
          <AmountField label={NAMES.bagFt3} lacking={MISSING} {...amounts.field('bag')} />
        </>
      ) : null}
      {kind === 'tube' ? <AmountField label={NAMES.tubeOdIn} lacking={MISSING} {...amounts.field('tube')} /> : null}
      {seen ? null : <AmountField label="On hand now" hint="Blank for none" {...amounts.field('onHand')} />}
      <AmountField
        label={NAMES.priceMinor}
        hint="What you pay; kits are priced with it. Blank if you don’t know"
        unitWords={`${money.currency} a ${shownUnit}`}
        {...amounts.field('price')}
      />
      <AmountField label="Days from the order to the shelf" {...amounts.field('leadDays')} />
      {seen ? (
        <p>
          <Button kind="danger" busy={archive.isPending} onClick={() => archive.send({ stockItemId: seen.id, version: seen.version })}>
            Archive this item
          </Button>
        </p>
      ) : null}
    </FormDialog>
  )
}
