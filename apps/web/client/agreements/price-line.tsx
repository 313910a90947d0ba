'use client'
import type { Price } from '@almanac/contract/agreements'
import { pricePers, pricePerWords } from '@almanac/records/agreement'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { Select } from '@almanac/ui/select'
import { useState } from 'react'
import { AmountField } from '../amount-field.tsx'
import { useAmounts } from '../use-amounts.ts'
import { useMoney } from '../use-money.ts'

/** A price being typed and what it is for; `read` answers null while it cannot be sent. */
export function usePrice(start: Price | null) {
  const money = useMoney()
  const amounts = useAmounts({ price: money.rule }, { start: { price: { text: money.text(start?.minor ?? null) } } })
  const [per, setPer] = useState<Price['per']>(start?.per ?? 'year')
  const read = (): Price | null => {
    const typed = amounts.read()
    return typed && { minor: typed.price && money.minorOf(typed.price.value), per }
  }
  return { field: amounts.field('price'), currency: money.currency, per, setPer, read }
}

export function PriceFields({ price }: { price: ReturnType<typeof usePrice> }) {
  return (
    <>
      <AmountField label="Price" hint="Leave blank if none is agreed" unitWords={price.currency} {...price.field} />
      <Select
        label="Price is for"
        choices={choicesOf(pricePers, pricePerWords)}
        value={price.per}
        onChange={(event) => price.setPer(oneOf(pricePers, event.target.value) ?? 'year')}
      />
    </>
  )
}
