import { mergeFigures } from '@almanac/softener/firm/merge-figures'
import sharp from 'sharp'
import { extractImages, extractText, getDocumentProxy } from 'unpdf'
import { beforeAll, describe, expect, it } from 'vitest'
import { englishLeft } from '../../../tests/support/english-left.ts'
import { renderServiceReport, reportFileName } from './render-service-report.ts'
import type { ReportFacts } from './report-facts.ts'

const { figures } = mergeFigures([])
let photograph: Uint8Array
let drawn: Uint8Array

beforeAll(async () => {
  const plain = (width: number, height: number) => sharp({ create: { width, height, channels: 3, background: '#c08844' } })
  photograph = await plain(64, 48).jpeg().toBuffer()
  drawn = await plain(80, 30).png().toBuffer()
})

const HEAD = { firmName: 'Fern & Lark Water', telephone: '(555) 010-2233', address: null, mail: null, licence: null, logo: null }

/** A rebed as a crew hands it in; all names are invented. */
function facts(change: Partial<ReportFacts> = {}): ReportFacts {
  return {
    head: HEAD,
    display: { locale: 'en-US', unitSystem: 'us', currency: 'USD' },
    paper: 'letter',
    figures,
    day: '2026-12-03',
    customerName: 'Hester Vance',
    site: { label: 'Orchard Lane 14', street: 'Orchard Lane 14', town: 'Weir Hollow' },
    softenerLabel: 'Softener in the cellar',
    twin: null,
    kind: 'rebed',
    outcome: 'done',
    people: ['Callum Orr', 'Ruth Ames'],
    bed: {
      ...{ bedId: '019b0000-0000-7000-8000-000000000001', resinKind: 'gel-10', volumeFt3: 1.5, gravelLb: 18, tubeCutIn: 52.125 },
      ...{ diameterIn: 10, heightIn: 54, nominalGrains: 48_000, sizeAsWritten: '10x54' },
      ...{ tubeOdIn: 1.05, valveCardId: null, backwashGpm: 2.4 },
    },
    temperatureC: 11,
    measured: { rawGpg: 18, beforeGpg: 6, afterGpg: 0.5, ironMgL: 0.2, pressurePsi: 58 },
    done: {
      steps: ['seals-renewed', 'sanitised', 'leaks-checked'],
      oldBed: { cause: 'worn' },
      newBed: { resinKind: 'gel-10', volumeFt3: 1.5, gravelLb: 18, tubeCutIn: 52.125 },
      parts: [{ name: 'Valve seal set', quantity: 1 }],
      extra: { what: 'a new saddle valve', agreedWith: 'Mrs Vale' },
      followUp: { kind: 'repair', what: 'the bypass drips' },
    },
    settings: { valve: 'Metered valve, 1 in', control: 'meter', saltLb: 9, backwashGpm: 2.4 },
    nextDue: { from: '2036-04-01', until: '2041-09-01' },
    photographs: [
      { kind: 'as-found', bytes: photograph },
      { kind: 'old-bed', bytes: photograph },
      { kind: 'as-left', bytes: photograph },
    ],
    morePhotographs: 0,
    signature: { answer: 'signed', name: 'Hester Vance', day: '2026-12-03', bytes: drawn },
    ...change,
  }
}

const open = async (change: Partial<ReportFacts> = {}) => getDocumentProxy(await renderServiceReport(facts(change)))
async function read(change: Partial<ReportFacts> = {}): Promise<string> {
  const { text } = await extractText(await open(change), { mergePages: true })
  return text.replace(/\s+/g, ' ')
}

describe('the service report, read back', () => {
  it('tells what was done, what was measured before and after, the tank, the settings, when it is due next, and who signed', async () => {
    const said = await read()
    for (const text of [
      'Rebed, Orchard Lane 14',
      'Dec 3, 2026',
      'Hester Vance',
      'Callum Orr, Ruth Ames',
      '(555) 010-2233',
      'The work is finished and your softener is in service.',
      'Reason: worn out.',
      'New resin: 1½ ft³, 10% crosslink softening resin.',
      'New gravel: 18 lb.',
      'cut to 52 1/8 in',
      'Softener sanitized.',
      'Parts used: 1 × Valve seal set.',
      'Also done, as agreed with Mrs Vale: a new saddle valve',
      'Another visit is needed (repair): the bypass drips',
      'Hardness of your water 18 gpg',
      'before our work 6 gpg',
      'after our work 0.5 gpg',
      'Water pressure 58 psi',
      '10 × 54 in',
      // 1.5 ft³ over the area of a 10 in circle: 33.0 in (volume over area).
      'bed 33 in',
      'by the water you use',
      'Salt for each regeneration 9 lb',
      'Likely due Apr 2036 – Sep 2041',
      'As found',
      'Old bed',
      'As left',
      'Signed by Hester Vance, Dec 3, 2026',
      'page 1 of',
    ])
      expect(said).toContain(text)
    expect(said).not.toMatch(/NaN|undefined|null|\{|[$€]|cut tube here|backwash,/)
  })

  it('prints each photograph and the signature', async () => {
    const pdf = await open()
    let images = 0
    for (let page = 1; page <= pdf.numPages; page++) images += (await extractImages(pdf, page)).length
    expect(images).toBe(4)
  })

  it('has no letter smaller than 11 points', async () => {
    const pdf = await open()
    const sizes = new Set<number>()
    for (let page = 1; page <= pdf.numPages; page++)
      for (const item of (await (await pdf.getPage(page)).getTextContent()).items)
        if ('transform' in item && item.str.trim()) sizes.add(Math.round(Math.abs(item.transform[3]) * 10) / 10)
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(11)
  })

  it('speaks Spanish throughout, with the company’s units and paper', async () => {
    const display = { locale: 'es-US', unitSystem: 'metric', currency: 'USD' } as const
    const said = await read({ display })
    const named = [
      'Hester Vance',
      'Orchard Lane 14',
      'Weir Hollow',
      'Softener in the cellar',
      'Valve seal set',
      'Metered valve, 1 in',
      'Fern & Lark Water',
      // As it was typed.
      'a new saddle valve',
      'Mrs Vale',
      'the bypass drips',
    ]
    expect(englishLeft(said, named)).toEqual([])
    // 18 gpg × 17.118 mg/L (one grain a US gallon as CaCO3).
    expect(said).toContain('308 mg/L')
    expect(said).toContain('Firmado por Hester Vance')
    const size = async (paper: 'letter' | 'a4') => (await (await open({ paper, display })).getPage(1)).view.slice(2).map(Math.round)
    // US letter is 8½ × 11 in of 72 points; A4 is 210 × 297 mm (ISO 216).
    expect([await size('letter'), await size('a4')]).toEqual([
      [612, 792],
      [595, 842],
    ])
  })

  it('says what is not known, and why nobody signed', async () => {
    const nothing = { rawGpg: null, beforeGpg: null, afterGpg: null, ironMgL: null, pressurePsi: null }
    const said = await read({
      ...{
        outcome: 'no-access',
        customerName: null,
        head: { ...HEAD, telephone: null },
        softenerLabel: null,
        bed: null,
        temperatureC: null,
        measured: nothing,
      },
      done: { steps: [], oldBed: null, newBed: null, parts: [], extra: null, followUp: null },
      settings: { valve: null, control: 'unknown', saltLb: null, backwashGpm: null },
      ...{ nextDue: null, photographs: [], signature: { answer: 'not-there', name: null, day: '2026-12-03', bytes: null } },
    })
    for (const text of ['couldn’t get to the softener', 'not measured', 'We can’t say yet', 'Nobody was there to sign'])
      expect(said).toContain(text)
    expect(said).not.toMatch(/Settings now|tank now|Photographs|NaN|null/)
  })

  it('goes on to further sheets with many photographs, and says how many more there are', async () => {
    const many = Array.from({ length: 12 }, () => ({ kind: 'as-left' as const, bytes: photograph }))
    const pdf = await open({ photographs: many, morePhotographs: 5 })
    expect(pdf.numPages).toBeGreaterThan(2)
    expect(await read({ photographs: many, morePhotographs: 5 })).toContain('We keep 5 more photographs.')
  })

  it('is named after the site and its day', () => expect(reportFileName(facts())).toBe('service-report-orchard-lane-14-2026-12-03.pdf'))
})
