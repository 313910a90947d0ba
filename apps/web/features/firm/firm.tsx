'use client'
import { CURVE_KEYS } from '@almanac/softener/firm/read-figure'
import { tankKey } from '@almanac/softener/firm/read-tank'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Section } from '@almanac/ui/section'
import { useState } from 'react'
import { v7 } from 'uuid'
import { usePermission, useSession } from '@/client/providers'
import { ClosePart } from './close-part.tsx'
import { EditFigure } from './edit-figure.tsx'
import { FigureHistory } from './figure-history.tsx'
import { FigureRows } from './figure-rows.tsx'
import { SettingsPart } from './settings-part.tsx'

const PARTS = [
  {
    title: 'Resin and salt',
    lead: 'How much a cubic foot softens at each salt dose. Sources differ by about 10%: set your own if your beds show otherwise.',
    keys: [...CURVE_KEYS, 'reserve', 'backwash:gpm-ft2', 'backwash:expansion'],
  },
  {
    title: 'Water allowances',
    lead: 'Added to the hardness a softener is set for, because iron and manganese foul the bed.',
    keys: ['allowance:iron', 'allowance:manganese'],
  },
  { title: 'Gravel', lead: 'For units whose record doesn’t say if they have gravel.', keys: ['gravel-from-ft3'] },
  {
    title: 'After a rebed',
    lead: 'What the test at the valve outlet must show before a visit is done.',
    keys: ['outlet-limit-gpg'],
  },
  { title: 'Bags in stock', lead: 'Kits use these bags, with as little left over as possible.', keys: ['bags'] },
  {
    title: 'Prices of salt and water',
    lead: 'Used to work out what a softener costs to run.',
    keys: ['price:salt-per-lb', 'price:water-per-gal'],
  },
] as const

/** The firm's own figures beside the usual ones: what they are, where they come from, who set them and why. */
export function Firm() {
  const { figures } = useSession()
  const owner = usePermission('manage:company')
  const [adding, setAdding] = useState<string | null>(null)
  const add = (kind: 'tank' | 'valve', word: string) =>
    owner ? <Button onClick={() => setAdding(kind === 'tank' ? 'tank:new' : `valve:${v7()}`)}>{word}</Button> : undefined
  return (
    <>
      <PageHead
        title="Company settings"
        lead="Your company, its hours and prices; below them the figures that the app computes with. A change takes effect at once."
      />
      {owner ? null : <Notice kind="mind">You can read these here. Only the owner changes them.</Notice>}
      {owner ? <SettingsPart /> : null}
      <p className="mt-10 max-w-[75ch] text-soft">
        Calculation figures: where the trade has no agreed figure, yours counts, in every kit, drawing and plan.
      </p>
      <Section title="Tanks and usual fills" actions={add('tank', 'Add a tank')}>
        <p className="mb-3 max-w-[75ch] text-soft">Used when neither the label nor the last service record says what’s in a tank.</p>
        <FigureRows keys={figures.tanks.map(tankKey)} owner={owner} />
      </Section>
      <Section title="Valves" actions={add('valve', 'Add a valve')}>
        <p className="mb-3 max-w-[75ch] text-soft">
          The valve types you work on. Link a softener’s valve to its type to get its tube and backwash.
        </p>
        <FigureRows keys={figures.valves.map((card) => `valve:${card.id}`)} owner={owner} />
      </Section>
      {PARTS.map((part) => (
        <Section key={part.title} title={part.title}>
          <p className="mb-3 max-w-[75ch] text-soft">{part.lead}</p>
          <FigureRows keys={part.keys} owner={owner} />
        </Section>
      ))}
      {owner ? <FigureHistory /> : null}
      {owner ? <ClosePart /> : null}
      {adding ? <EditFigure figureKey={adding} value={null} row={undefined} onClose={() => setAdding(null)} /> : null}
    </>
  )
}
