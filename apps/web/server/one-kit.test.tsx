import type { BedPage } from '@almanac/contract/beds'
import type { Me } from '@almanac/contract/session'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readBedPage } from '@almanac/database/read/bed-page'
import { readBedPlan } from '@almanac/database/read/bed-plan'
import { readJob } from '@almanac/database/read/job-page'
import { readSoftenerSettings } from '@almanac/database/read/softener-settings'
import { readVisit } from '@almanac/database/read/visit-page'
import { makePlan } from '@almanac/documents/rebed-plan/make-plan'
import { firmFigures } from '@almanac/operations/shared/firm-figures'
import { usualTake } from '@almanac/operations/stores/order-list'
import type { BedFacts } from '@almanac/records/bed-facts'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type { RebedKit } from '@almanac/softener/kit/kit-types'
import { takeFromStores } from '@almanac/softener/kit/take-from-stores'
import { drawingOf } from '@almanac/softener/rebed/drawing-of-record'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import { formatCutLengthIn, formatWeightLb } from '@almanac/units/format'
import { readNumber } from '@almanac/units/read-number'
import { messagesOf } from '@almanac/words/messages-of'
import { wordsIn } from '@almanac/words/words-in'
import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { type BookedFirm, type BookedRebed, bookRebeds, DAY } from '../../../tests/support/one-kit/booked-rebeds.ts'
import { type DemoFirm, loadDistinctSofteners } from '../../../tests/support/one-kit/demo-softeners.ts'
import { printedPlans } from '../../../tests/support/one-kit/on-paper.ts'
import { ENGLISH } from '../../../tests/support/procedure-words.ts'
import { inspector } from '../../../tests/support/two-firms.ts'
import { Providers } from '../client/providers.tsx'
import type { CardChanges } from '../client/settings-card/card-changes.ts'
import { siteOfRecord } from '../client/settings-card/site-of-record.ts'
import { BedKit } from '../features/bed/bed-kit.tsx'
import { sheetLoad } from '../features/day-sheets/sheet-load.ts'
import { cardDrawing } from '../features/settings-card/card-drawing.ts'
import { procedureOf } from '../features/visit/procedure-of.ts'
import { suggestedParts } from '../features/visit/suggested-parts.ts'
import { VisitKit } from '../features/visit/visit-kit.tsx'
import { planFacts } from './rebed-plan.ts'

// Next's own guard, which throws outside a server bundle.
vi.mock('server-only', () => ({}))

const NOTHING = { people: null, hardnessGpg: null, coldestF: null, warmestF: null, fixtures: null, control: null, doseLbFt3: null }
const UNCHANGED: CardChanges = { ...NOTHING, curve: 'ipc', model: 'richardson-zaki', salt: 'NaCl' }

let firms: DemoFirm[]
beforeAll(async () => {
  firms = await loadDistinctSofteners()
}, 200_000)
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

/** A screen as the browser first shows it, as text. */
function screen({ company }: BookedFirm, part: ReactNode): string {
  const person = { id: newId(), name: 'Someone', email: 'someone@example.com', language: null, secondStep: false }
  const me: Me = { person, company: { ...company, closesAt: null }, role: 'owner', permissions: [], companies: [], today: DAY, figures: [] }
  return renderToStaticMarkup(
    <Providers me={me} messages={messagesOf('office', 'en-US')}>
      {part}
    </Providers>,
  )
    .replace(/<[^>]+>/g, ' ')
    .replace(/&#x27;/g, "'")
    .replace(/&amp;/g, '&')
    .replace(/\s+/g, ' ')
}

/** What of a kit must be the same wherever it is used. */
const signature = (kit: RebedKit) => ({
  tubeIn: kit.tubeLengthIn,
  tubeOdIn: kit.tubeOutsideDiameterIn,
  resin: `${kit.resinFt3} ft³ ${kit.resinKind}`,
  gravelLb: kit.gravelLb,
  dose: kit.lines.find((line) => line.item === 'sanitiser')?.text,
  lb: [kit.loadWeightLb, kit.fullTankLb, kit.heaviestLiftLb],
  lines: kit.lines.map((line) => line.text),
})

const sorted = (list: (readonly [string, number])[]) => [...list].sort(([a], [b]) => (a < b ? -1 : 1))

/** Where the paths of one bed disagree, in words. The PDF's plan is held against all the others. */
async function disagreements(firm: BookedFirm, { bedId, softenerId, jobId, visitId }: BookedRebed): Promise<string[]> {
  const { company, figures, demand, sheet } = firm
  const rebedFirm = { figures, display: company, words: ENGLISH.kit }
  const scope = { companyId: company.id }
  const plan = makePlan(planFacts(await readBedPlan(scope, bedId), company, figures, DAY))
  const page = await readBedPage(scope, bedId)
  const job = await readJob(scope, jobId)
  const visit = await readVisit({ ...scope, personId: newId() }, visitId)
  const inOrder = demand.beds.find((one) => one.bed.bedId === bedId)
  if (!plan.kit.ok)
    return [page, job, visit].every((one) => !kitOf('facts' in one ? one.facts : (one.bed as BedFacts), rebedFirm).ok) ? [] : ['kit']
  const expected = plan.kit.value
  const wrong: string[] = []
  const same = (path: string, got: unknown, wanted: unknown) => {
    if (JSON.stringify(got) !== JSON.stringify(wanted)) wrong.push(`${path}: ${JSON.stringify(got)}, on the plan ${JSON.stringify(wanted)}`)
  }
  const jobKit = job.bed && kitOf(job.bed, rebedFirm)
  same('job page', jobKit?.ok && signature(jobKit.value), signature(expected))
  const onPage = screen(firm, <BedKit bed={page as BedPage} />)
  const onTablet = screen(firm, <VisitKit visit={visit} />)
  for (const line of expected.lines)
    for (const [path, text] of [
      ['bed page', onPage],
      ['tablet', onTablet],
    ] as const)
      if (!text.includes(line.text)) wrong.push(`${path}: no "${line.text}" in ${text}`)
  for (const text of [
    `tube cut to ${formatCutLengthIn(expected.tubeLengthIn, company)}`,
    formatWeightLb(expected.loadWeightLb, company),
    formatWeightLb(expected.fullTankLb, company),
  ])
    if (!onPage.includes(text)) wrong.push(`bed page: no "${text}" in ${onPage}`)
  same('steps', procedureOf(visit, company, figures, ENGLISH).steps, plan.procedure.steps)
  const drawn = visit.bed && drawingOf(visit.bed, visit.water, rebedFirm)
  same('drawing', drawn?.ok && drawn.value, plan.drawing.ok && plan.drawing.value)
  const load = sheet && sheetLoad({ visits: sheet.visits.filter((one) => one.id === visitId) }, rebedFirm)
  same('load', load && [load.volumeFt3, load.weightLb], [expected.loadVolumeFt3, expected.loadWeightLb])
  const taken = sorted(takeFromStores(expected, demand.items).taken.map((one) => [one.item.id, one.quantity]))
  const reserved = firm.reserved.filter((one) => one.visitId === visitId)
  same('reservation', sorted(reserved.map((one) => [one.stockItemId, one.quantity])), taken)
  const take = usualTake({ beds: inOrder ? [{ ...inOrder, weight: 1 }] : [], items: demand.items }, { figures, display: company })
  same('order list', sorted([...take]), taken)
  const used = suggestedParts(visit, rebedFirm).flatMap(({ stockItemId, quantity }) =>
    stockItemId === null ? [] : [[stockItemId, readNumber(quantity, company.locale) ?? Number.NaN] as const],
  )
  same('parts used', sorted(used), taken)
  // The card is of the softener's first tank with a bed; the tanks of one softener are alike.
  const record = await readSoftenerSettings(scope, softenerId)
  if (record.tanks.find((one) => one.bed)?.bed?.id === bedId) {
    const { input } = siteOfRecord(record, UNCHANGED, { ...rebedFirm, card: wordsIn('en-US', 'card') }, DAY)
    const card = cardDrawing(input, input.backwashGpm, 50, rebedFirm)
    const parts = (drawing: typeof card | typeof drawn) =>
      drawing?.ok && [drawing.value.callouts, drawing.value.shapes.filter(({ role }) => /^(shell|gravel|bed|tube)$/.test(role))]
    same('settings card', parts(card), parts(drawn))
  }
  return wrong
}

/** Walks the rebeds four at a time: each waits for the database most of its time. */
async function walk(firm: BookedFirm): Promise<string[]> {
  const wrong: string[] = []
  const left = [...firm.rebeds]
  const one = async () => {
    for (let rebed = left.pop(); rebed; rebed = left.pop())
      for (const words of await disagreements(firm, rebed)) wrong.push(`${firm.company.name}, bed ${rebed.bedId}: ${words}`)
  }
  await Promise.all(Array.from({ length: 4 }, one))
  return wrong
}

describe('one bed, one kit: tube, resin, gravel, dose and weights are the same on bed page, job page, tablet, plan, reservation, load, order list, parts used and settings card', () => {
  it('for every record that a softener of the demo has', async () => {
    expect(firms.map((firm) => firm.softeners)).toEqual([1500, 60])
    for (const firm of firms) {
      const booked = await bookRebeds(firm, firm.bedIds)
      console.info(`${firm.company.name}: ${firm.softeners} softeners, ${firm.records} records`)
      expect(booked.rebeds.length).toBe(firm.records)
      expect(await walk(booked)).toEqual([])
    }
  }, 200_000)

  it('on the printed plan too, read back', async () => {
    for (const firm of firms) {
      const printed = await printedPlans(firm)
      expect(printed.length).toBeGreaterThan(2)
      for (const { said, tube, weight } of printed) {
        expect(said).toContain(tube)
        expect(said).toContain(weight)
      }
    }
  }, 200_000)

  it('for tubes that were recorded, and for valves whose card has the tube', async () => {
    for (const firm of firms) {
      const bedIds = firm.bedIds.filter((_, index) => index % 4 === 0)
      const card = (await inCompany({ companyId: firm.company.id }, (tx) => firmFigures(tx, firm.company.id))).valves.find(
        (one) => one.tubeOdIn === 1.9,
      )
      await recordTubes(firm, bedIds, card?.id ?? '')
      const booked = await bookRebeds(firm, bedIds)
      const recorded = booked.demand.beds.filter(({ bed }) => bed.tubeCutIn !== null && bed.valveCardId === card?.id)
      expect(recorded.length).toBeGreaterThan(5)
      expect(await walk(booked)).toEqual([])
    }
  }, 200_000)
})

/** Tubes cut 1⅜ in shorter than their tanks, as 52⅝ in for 54, of 1.9 in by the valve's card alone. */
async function recordTubes({ company }: DemoFirm, bedIds: readonly string[], cardId: string): Promise<void> {
  const db = await inspector()
  await db.query(
    `update bed set tube_cut_in = tank.height_in - 1.375 from tank where tank.company_id = bed.company_id and tank.id = bed.tank_id and bed.company_id = $1 and bed.id = any($2)`,
    [company.id, bedIds],
  )
  await db.query(
    `update valve set card_id = $3, tube_od_in = null from tank, bed where tank.softener_id = valve.softener_id and bed.tank_id = tank.id and bed.company_id = $1 and bed.id = any($2)`,
    [company.id, bedIds, cardId],
  )
  await db.end()
}
