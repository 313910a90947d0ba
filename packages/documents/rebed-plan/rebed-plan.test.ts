import type { BedFacts } from '@almanac/records/bed-facts'
import { mergeFigures } from '@almanac/softener/firm/merge-figures'
import { TANK_SIZES } from '@almanac/softener/tanks/tank-sizes'
import { extractText, getDocumentProxy } from 'unpdf'
import { describe, expect, it } from 'vitest'
import { englishLeft } from '../../../tests/support/english-left.ts'
import type { PlanFacts } from './plan-facts.ts'
import { planFileName, renderRebedPlan } from './render-rebed-plan.ts'

const { figures } = mergeFigures([])

const UNKNOWN: BedFacts = {
  ...{ bedId: '019b0000-0000-7000-8000-000000000001', resinKind: 'unknown', volumeFt3: null, gravelLb: null, tubeCutIn: null },
  ...{ diameterIn: null, heightIn: null, nominalGrains: null, sizeAsWritten: null },
  ...{ tubeOdIn: null, valveCardId: null, backwashGpm: null },
}
const BED: BedFacts = {
  ...UNKNOWN,
  ...{ resinKind: 'gel-8', volumeFt3: 1.5, gravelLb: 18, tubeCutIn: 52.125 },
  ...{ diameterIn: 10, heightIn: 54, nominalGrains: 48_000, sizeAsWritten: '10x54' },
  ...{ tubeOdIn: 1.05, valveCardId: figures.valves[0]?.id ?? null, backwashGpm: 2.4 },
}

/** A bed as a firm may know it; all names and prices are invented. */
function facts(change: Partial<PlanFacts> = {}): PlanFacts {
  return {
    firmName: 'Fern & Lark Water',
    logo: null,
    printed: '25 Nov 2026',
    display: { locale: 'en-US', unitSystem: 'us', currency: 'USD' },
    paper: 'letter',
    figures,
    site: {
      label: 'Orchard Lane 14',
      street: 'Orchard Lane 14',
      town: 'Weir Hollow',
      accessNotes: 'Cellar door behind the house; dog.',
      whom: 'Hester Vance, (555) 012-7746',
    },
    softenerLabel: 'Softener in the cellar',
    visit: { when: 'Dec 3, 2026, 8:10 AM', crew: 'Ruth Ames, Callum Orr' },
    twin: null,
    bed: BED,
    emptied: null,
    bedBegan: '2014',
    water: { source: 'town', hardnessGpg: 18, ironMgL: 0.2, temperatureC: 11, disinfectant: 'chloramine' },
    shelf: [{ label: '1 ft³ bag', resinKind: 'gel-8', volumeFt3: 1, onHand: 4 }],
    ...change,
  }
}

async function read(change: Partial<PlanFacts> = {}): Promise<string[]> {
  const pdf = await getDocumentProxy(await renderRebedPlan(facts(change)))
  const { text } = await extractText(pdf, { mergePages: false })
  return text.map((page) => page.replace(/\s+/g, ' '))
}

describe('the rebed plan, read back', () => {
  it('sheet 1: site, drawing with its dimensions, kit with weights, when, who, and what to write down', async () => {
    const [first = ''] = await read()
    for (const text of [
      'Rebed plan: Orchard Lane 14',
      'Cellar door behind the house; dog.',
      // 1.5 ft³ over the area of a 10 in circle: 33.0 in (volume over area).
      'bed 33 in',
      'cut tube here, 52 1/8 in',
      '1½ ft³',
      '1 × 1 ft³ bag of 8% crosslink softening resin (on the shelf)',
      'comes back',
      'Dec 3, 2026, 8:10 AM',
      'Ruth Ames, Callum Orr',
      'Hester Vance, (555) 012-7746',
      'Water pressure _______ psi',
      'Old beads _______',
      'Water level in the brine tank _______ in',
      '(± 1/8 in)',
      '2 people',
      'never tipped by one person',
      'Scale on full-size paper 1 : 10',
      '1 of 3',
    ])
      expect(first).toContain(text)
    expect(first).not.toMatch(/NaN|undefined|null|\?\?/)
    expect(first).not.toContain('Tank, around and height')
  })

  it('names no price of the firm’s, and no sign that only a computer reads: it may lie in the customer’s cellar', async () =>
    expect((await read()).join(' ')).not.toMatch(/[$€]|price|\b[0-9a-f]{6}\b/i))

  it('has a blank for the size where nobody knows it, and says where no visit is booked', async () => {
    const [first = ''] = await read({ bed: UNKNOWN, visit: null })
    expect(first).toContain('Tank, around and height _______ in')
    expect(first).toContain('not booked yet')
  })

  it('sheets 2 and 3: pressure goes off before power, each caution before its step, reasons to stop, and the local code', async () => {
    const [, two = '', three = ''] = await read()
    const second = `${two} ${three}`
    const at = (text: string) => {
      expect(second).toContain(text)
      return second.indexOf(text)
    }
    expect(at('Relieve the pressure')).toBeLessThan(at('Unplug the valve'))
    expect(at('Full house pressure')).toBeLessThan(at('To backwash while it has power: drain seen running, then stopped.'))
    expect(at('Center the tube, cap it')).toBeLessThan(at('Take the cap out, count it'))
    for (const text of [
      'Lead service line or lead pipe',
      'Asbestos where you would work',
      'Crawl space',
      'Boil-water notice',
      'Cracked tank',
      'permit or license',
      'Never mix bleach with iron cleaner',
      'lifting index of 2.2',
      'The local plumbing code and a licensed person come before anything on this sheet',
      'Length of the old tube with its basket _______ in',
      '2 of 3',
      '3 of 3',
      // The dose stands in its own step: 1.2 fl oz of 5.25% a ft³ is 0.76 of 8.25%, and this bed has 1½ ft³ (typical manual).
      '1.1 fl oz of plain 8.25% bleach into the brine well',
    ])
      at(text)
  })

  it.each(
    TANK_SIZES.flatMap((tank) =>
      // Spanish runs longer; a letter sheet is the shorter one.
      (
        [
          ['us', 'en-US', 'of 8% crosslink softening resin', 'Take away the old bed'],
          ['metric', 'de-DE', 'of 8% crosslink softening resin', 'Take away the old bed'],
          ['us', 'es-US', 'resina ablandadora, 8 % de entrecruzamiento', 'Llévese el lecho viejo'],
        ] as const
      ).map(([unitSystem, locale, resin, last]) => ({ tank, unitSystem, locale, resin, last })),
    ),
  )(
    'exactly three sheets for $tank.diameterIn × $tank.heightIn in, $unitSystem, $locale',
    async ({ tank, unitSystem, locale, resin, last }) => {
      const { diameterIn, heightIn } = tank
      const pages = await read({
        display: { locale, unitSystem, currency: 'USD' },
        bed: { ...UNKNOWN, diameterIn, heightIn },
        ...{ bedBegan: null, softenerLabel: null },
        water: { source: 'private-well', hardnessGpg: null, ironMgL: null, temperatureC: null, disinfectant: null },
        shelf: [],
      })
      expect(pages).toHaveLength(3)
      expect(pages[0]).toContain(resin)
      // The last step and the title block are there: nothing ran off the sheet.
      expect(pages[2]).toContain(last)
      expect(pages[2]).toMatch(/3 (of|de) 3/)
    },
  )

  it('of a tank that an earlier visit emptied: begins so, with what was found, and neither measures nor takes out a bed', async () => {
    const emptied = {
      day: '2026-11-20',
      found: 'neck thread worn\nwaits for a new tank',
      tubeIn: 43.25,
      gravel: 'mixed',
      condition: 'thread',
    } as const
    const full = await read()
    const pages = await read({ emptied })
    expect(pages).toHaveLength(3)
    const [first = ''] = pages
    for (const text of [
      'The tank is empty. The old bed came out on Nov 20, 2026, and the softener was left in bypass.',
      'Length of the old tube with its basket: 43¼ in.',
      'Gravel found: mixed into the resin.',
      'Tank: neck or thread damaged.',
      'Found then: neck thread worn waits for a new tank',
      'Bed that came out',
    ])
      expect(first).toContain(text)
    // By hand, what is in the tank no more (common practice, no source): no depth and beads to look at, no draining, no taking out.
    for (const text of ['Measure the bed, take a sample', 'Drain the tank, keep it vented', 'Remove tube and old bed']) {
      expect(full.join(' ')).toContain(text)
      expect(pages.join(' ')).not.toContain(text)
    }
    for (const text of ['Old beads _______', 'Old resin out', 'Bed as found']) {
      expect(full[0]).toContain(text)
      expect(first).not.toContain(text)
    }
    expect(pages.join(' ')).toContain('Rinse and inspect the tank')
    const spanish = await read({ emptied, display: { locale: 'es-US', unitSystem: 'us', currency: 'USD' } })
    expect(spanish[0]).toContain('El tanque está vacío.')
  })

  it.each(TANK_SIZES)('exactly three sheets for an emptied tank of $diameterIn × $heightIn in', async ({ diameterIn, heightIn }) => {
    const emptied = {
      day: '2026-11-20',
      found: 'neck thread worn, '.repeat(30),
      tubeIn: 43.25,
      gravel: 'mixed',
      condition: 'thread',
    } as const
    const pages = await read({
      emptied,
      bed: { ...UNKNOWN, diameterIn, heightIn },
      display: { locale: 'es-US', unitSystem: 'us', currency: 'USD' },
    })
    expect(pages).toHaveLength(3)
    expect(pages[0]).toContain('El tanque está vacío.')
  })

  it('of a twin every sheet says which tank, the steps too', async () => {
    const pages = await read({ twin: { position: 2, of: 2, arrangement: 'twin-alternating' } })
    for (const page of pages) expect(page).toContain('tank 2 of 2')
    const steps = `${pages[1]} ${pages[2]}`
    for (const title of ['Take the valve off', 'Remove tube and old bed', 'Pour the resin', 'Set, open and hand over'])
      expect(steps).toContain(`${title}: tank 2 of 2`)
    expect(steps).toContain('tank 2 of 2 alone: its inlet and outlet closed'.replace('tank', 'Tank'))
    expect((await read()).join(' ')).not.toMatch(/tank \d of \d/)
  })

  it('speaks Spanish throughout, with an American company’s inches, dollars and paper', async () => {
    const pages = await read({ display: { locale: 'es-US', unitSystem: 'us', currency: 'USD' } })
    const named = [
      'Orchard Lane 14',
      'Weir Hollow',
      'Cellar door behind the house; dog.',
      'Softener in the cellar',
      figures.valves[0]?.label ?? '',
    ]
    expect(englishLeft(pages.join(' '), named)).toEqual([])
    expect(pages[0]).toContain('corte el tubo aquí, 52 1/8 in')
    const sheets = async (paper: 'letter' | 'a4', locale: string, unitSystem: 'us' | 'metric') => {
      const pdf = await getDocumentProxy(await renderRebedPlan(facts({ paper, display: { locale, unitSystem, currency: 'USD' } })))
      return (await pdf.getPage(1)).view.slice(2)
    }
    // US letter is 8½ × 11 in of 72 points; A4 is 210 × 297 mm (ISO 216).
    // The company says which: a metric one in Canada prints on letter.
    expect(await sheets('letter', 'es-US', 'us')).toEqual([612, 792])
    expect(await sheets('letter', 'en-CA', 'metric')).toEqual([612, 792])
    expect((await sheets('a4', 'es-ES', 'metric')).map(Math.round)).toEqual([595, 842])
  })

  it('exactly three sheets with the longest texts a record may hold, and without a tank size', async () => {
    const long = 'Behind the third door on the left past the boiler, key with the neighbour; '.repeat(20)
    const site = {
      label: long.slice(0, 160),
      street: long.slice(0, 120),
      town: long.slice(0, 80),
      accessNotes: long,
      whom: long.slice(0, 200),
    }
    const bed = { ...BED, diameterIn: null, heightIn: null, nominalGrains: null, sizeAsWritten: long }
    expect(await read({ site, bed, softenerLabel: long, bedBegan: long, firmName: long })).toHaveLength(3)
    const unknown = await read({ site, bed })
    expect(unknown).toHaveLength(3)
    const emptied = { day: '2026-11-20', found: long, tubeIn: 43.25, gravel: 'mixed', condition: 'thread' } as const
    expect(await read({ site, bed, emptied, softenerLabel: long, bedBegan: long, firmName: long })).toHaveLength(3)
    expect(unknown[0]).toContain('cannot be drawn until its diameter and its height')
  })

  it('names with marks and letters of other scripts are printed or shown as "?", never dropped', async () => {
    const [first = ''] = await read({ site: { label: 'Señora Łuczak, Дом', street: null, town: null, accessNotes: null, whom: null } })
    expect(first).toContain('Rebed plan: Señora Luczak, ???')
  })

  it('says nothing of the customer', async () => {
    expect((await read()).join()).not.toMatch(/phone|customer:|@/i)
  })

  it('is named after the site', () => {
    expect(planFileName('Orchard Lane 14, “Élan”')).toBe('rebed-plan-orchard-lane-14-elan.pdf')
    expect(planFileName('Дом')).toBe('rebed-plan.pdf')
  })
})
