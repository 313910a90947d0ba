import type { BedPage } from '@almanac/contract/beds'
import type { Me } from '@almanac/contract/session'
import { closeClients, type Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { BED_FACTS, bedFacts } from '@almanac/database/read/bed-facts'
import { readBedPage } from '@almanac/database/read/bed-page'
import { readBedPlan } from '@almanac/database/read/bed-plan'
import { sheetRows } from '@almanac/database/read/day-sheet-rows'
import { readJob } from '@almanac/database/read/job-page'
import { readStoreDemand } from '@almanac/database/read/store-demand'
import { readVisit } from '@almanac/database/read/visit-page'
import { commandTools } from '@almanac/database/run-command'
import { makePlan } from '@almanac/documents/rebed-plan/make-plan'
import { renderRebedPlan } from '@almanac/documents/rebed-plan/render-rebed-plan'
import { firmFigures } from '@almanac/operations/shared/firm-figures'
import { reserveKit } from '@almanac/operations/shared/reserve-kit'
import { usualTake } from '@almanac/operations/stores/order-list'
import type { BedFacts } from '@almanac/records/bed-facts'
import { openJobStates } from '@almanac/records/job-state'
import type { Paper } from '@almanac/records/paper'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { RebedKit } from '@almanac/softener/kit/kit-types'
import { takeFromStores } from '@almanac/softener/kit/take-from-stores'
import { drawingOf, kitOf } from '@almanac/softener/rebed/rebed-of-record'
import { formatCutLengthIn, formatWeightLb } from '@almanac/units/format'
import type { UnitSystem } from '@almanac/units/unit-system'
import { messagesOf } from '@almanac/words/messages-of'
import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { extractText, getDocumentProxy } from 'unpdf'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { loadDemo } from '../../../prisma/demo/load-demo.ts'
import { ENGLISH } from '../../../tests/support/procedure-words.ts'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { inspector } from '../../../tests/support/two-firms.ts'
import { Providers } from '../client/providers.tsx'
import { BedKit } from '../features/bed/bed-kit.tsx'
import { sheetLoad } from '../features/day-sheets/sheet-load.ts'
import { procedureOf } from '../features/visit/procedure-of.ts'
import { VisitKit } from '../features/visit/visit-kit.tsx'
import { planFacts } from './rebed-plan.ts'

// Next's own guard, which throws outside a server bundle.
vi.mock('server-only', () => ({}))

const DAY = '2027-02-01'
type Company = { id: string; name: string; unitSystem: UnitSystem; currency: string; locale: string; timeZone: string; paper: Paper }
let companies: Company[]

beforeAll(async () => {
  await loadDemo({ ...(await testDatabase()), anchorDay: '2026-11-25', log: () => {} })
  const db = await inspector()
  const { rows } = await db.query(
    `select id, name, unit_system as "unitSystem", currency, locale, paper, time_zone as "timeZone" from company order by name`,
  )
  companies = rows
  await db.end()
}, 500_000)
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

/** A booked rebed of a bed, as an office would book it; the job that is open already where there is one. */
async function bookRebed(tx: Tx, companyId: string, bedId: string, crewDayId: string): Promise<{ jobId: string; visitId: string }> {
  const bed = await tx.bed.findUniqueOrThrow({
    where: { companyId_id: { companyId, id: bedId } },
    include: { tank: { include: { softener: true } }, jobs: { where: { kind: 'rebed', state: { in: [...openJobStates] } } } },
  })
  const jobId = bed.jobs[0]?.id ?? newId()
  const { softener } = bed.tank
  if (!bed.jobs[0])
    await tx.job.create({
      data: {
        ...{ companyId, id: jobId, siteId: softener?.siteId ?? '', softenerId: softener?.id, bedId, kind: 'rebed' },
        ...{ state: 'booked', minutes: 120, crewSize: 2 },
      },
    })
  // A job has one open visit: the demo's own gives way.
  await tx.visit.updateMany({
    where: { companyId, jobId, state: { in: ['offered', 'booked', 'under-way'] } },
    data: { state: 'called-off' },
  })
  const visitId = newId()
  await tx.visit.create({
    data: {
      ...{ companyId, id: visitId, jobId, crewDayId, state: 'booked' },
      ...{ startsAt: new Date(`${DAY}T15:00:00Z`), endsAt: new Date(`${DAY}T17:00:00Z`) },
    },
  })
  await reserveKit(tx, commandTools(tx, { companyId, personId: null }, 'test', null), visitId, { kind: 'rebed', bedId })
  return { jobId, visitId }
}

type Firm = {
  company: Company
  figures: FirmFigures
  crewDayId: string
  beds: { id: string }[]
  demand: Awaited<ReturnType<typeof readStoreDemand>>
}

/** A screen as the browser first shows it, as text. */
function screen({ company }: Firm, part: ReactNode): string {
  const person = { id: newId(), name: 'Someone', email: 'someone@example.com', language: null, secondStep: false }
  const me: Me = { person, company, role: 'owner', permissions: [], companies: [], today: DAY, figures: [] }
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

/** Where the paths of one bed disagree, in words. The PDF's plan is held against all the others. */
async function disagreements(firm: Firm, bedId: string): Promise<string[]> {
  const { company, figures, crewDayId, demand } = firm
  const { id: companyId } = company
  const scope = { companyId }
  const { jobId, visitId } = await inCompany(scope, (tx) => bookRebed(tx, companyId, bedId, crewDayId))
  const plan = makePlan(planFacts(await readBedPlan(scope, bedId), company, figures, DAY))
  const page = await readBedPage(scope, bedId)
  const job = await readJob(scope, jobId)
  const visit = await readVisit(scope, visitId)
  const [sheet] = await inCompany(scope, (tx) => sheetRows(tx, companyId, { id: crewDayId }))
  const reserved = await inCompany(scope, (tx) => tx.kitReservation.findMany({ where: { companyId, visitId } }))
  await inCompany(scope, (tx) => tx.visit.update({ where: { companyId_id: { companyId, id: visitId } }, data: { state: 'called-off' } }))
  const inOrder = demand.beds.find((one) => one.bed.bedId === bedId)
  if (!plan.kit.ok)
    return [page, job, visit].every(
      (one) => !kitOf('facts' in one ? one.facts : (one.bed as BedFacts), { figures, display: company, words: ENGLISH.kit }).ok,
    )
      ? []
      : ['kit']
  const expected = plan.kit.value
  const wrong: string[] = []
  const same = (path: string, got: unknown, wanted: unknown) => {
    if (JSON.stringify(got) !== JSON.stringify(wanted)) wrong.push(`${path}: ${JSON.stringify(got)}, on the plan ${JSON.stringify(wanted)}`)
  }
  const jobKit = job.bed && kitOf(job.bed, { figures, display: company, words: ENGLISH.kit })
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
  const drawn = visit.bed && drawingOf(visit.bed, visit.water, { figures, display: company, words: ENGLISH.kit })
  same('drawing', drawn?.ok && drawn.value, plan.drawing.ok && plan.drawing.value)
  const load =
    sheet && sheetLoad({ visits: sheet.visits.filter((one) => one.id === visitId) }, { figures, display: company, words: ENGLISH.kit })
  same('load', load && [load.volumeFt3, load.weightLb], [expected.loadVolumeFt3, expected.loadWeightLb])
  const taken = takeFromStores(expected, demand.items).taken
  const sorted = (list: (readonly [string, number])[]) => [...list].sort(([a], [b]) => (a < b ? -1 : 1))
  same(
    'reservation',
    sorted(reserved.map((one) => [one.stockItemId, one.quantity])),
    sorted(taken.map((one) => [one.item.id, one.quantity])),
  )
  const take = usualTake({ beds: inOrder ? [{ ...inOrder, weight: 1 }] : [], items: demand.items }, { figures, display: company })
  same('order list', sorted([...take]), sorted(taken.map((one) => [one.item.id, one.quantity])))
  return wrong
}

/** One bed of each kind the firm has: by tank, resin, what of it is recorded, and its valve. */
async function oneOfEachKind(tx: Tx, companyId: string): Promise<{ id: string }[]> {
  const beds = await tx.bed.findMany({
    where: { companyId, endedLatest: null, archivedAt: null, tank: { softenerId: { not: null } } },
    include: BED_FACTS,
    orderBy: { id: 'asc' },
  })
  const kinds = new Map<string, { id: string }>()
  for (const bed of beds) {
    const { diameterIn, heightIn, resinKind, volumeFt3, gravelLb, tubeCutIn, valveCardId } = bedFacts(bed)
    const key = [diameterIn, heightIn, resinKind, volumeFt3 !== null, gravelLb, tubeCutIn !== null, valveCardId].join()
    if (!kinds.has(key)) kinds.set(key, bed)
  }
  console.info(`${beds.length} beds in service, ${kinds.size} kinds`)
  return [...kinds.values()]
}

/** The company with an empty day sheet, and its beds as the order list reads them: those with a forecast. */
async function prepare(company: Company): Promise<Firm> {
  const scope = { companyId: company.id }
  const crewDayId = newId()
  const beds = await inCompany(scope, (tx) => oneOfEachKind(tx, company.id))
  await inCompany(scope, (tx) =>
    tx.crewDay.create({
      data: {
        ...{ companyId: company.id, id: crewDayId, day: dateOf(DAY), name: 'All of them' },
        ...{ startsAt: new Date(`${DAY}T14:00:00Z`), endsAt: new Date(`${DAY}T23:00:00Z`) },
      },
    }),
  )
  const db = await inspector()
  await db.query(`set session_replication_role = replica`) // a forecast's run is not needed here
  await db.query(
    `insert into bed_forecast (company_id, id, bed_id, site_id, run_id, as_of_day, computed_at, due50_day, chance_12_months, weakness, month_chances, drivers, assumptions, missing)
     select $1, gen_random_uuid(), id, gen_random_uuid(), gen_random_uuid(), '2026-12-01', now(), '2027-01-01', 0.5, 0, '', '[]', '[]', '[]' from unnest($2::uuid[]) id`,
    [company.id, beds.map((one) => one.id)],
  )
  await db.end()
  const figures = await inCompany(scope, (tx) => firmFigures(tx, company.id))
  return { company, figures, crewDayId, beds, demand: await readStoreDemand(scope, '2026-11-25') }
}

describe('one bed, one kit', () => {
  it('tube, resin, gravel, dose and weights are the same on bed page, job page, tablet, plan, reservation, load and order list', async () => {
    const wrong: string[] = []
    for (const company of companies) {
      const firm = await prepare(company)
      for (const { id } of firm.beds) wrong.push(...(await disagreements(firm, id)).map((words) => `${company.name}, bed ${id}: ${words}`))
    }
    expect(wrong).toEqual([])
  }, 500_000)

  it('the printed plan, read back, says the same tube and weights', async () => {
    for (const company of companies) {
      const figures = await inCompany({ companyId: company.id }, (tx) => firmFigures(tx, company.id))
      const beds = await inCompany({ companyId: company.id }, (tx) => oneOfEachKind(tx, company.id))
      const picked = beds.filter((_, index) => index % Math.ceil(beds.length / 4) === 0)
      expect(picked.length).toBeGreaterThan(2)
      for (const { id } of picked) {
        const facts = planFacts(await readBedPlan({ companyId: company.id }, id), company, figures, DAY)
        const kit = kitOf(facts.bed, { figures, display: company, words: ENGLISH.kit })
        if (!kit.ok) continue
        const { text } = await extractText(await getDocumentProxy(await renderRebedPlan(facts)), { mergePages: true })
        // The paper writes fractions in plain figures, 52 1/8, and "about" before a length that is an estimate.
        const plain = (words: string) =>
          words
            .normalize('NFKD')
            .replaceAll('⁄', '/')
            .replace(/[\s,]+/g, '')
        const said = plain(text).replace('cuttubehereabout', 'cuttubehere')
        expect(said).toContain(plain(formatWeightLb(kit.value.loadWeightLb, company)))
        expect(said).toContain(plain(`cut tube here ${formatCutLengthIn(kit.value.tubeLengthIn, company)}`))
      }
    }
  }, 200_000)
})
