import { type JobKind, jobKinds } from '@almanac/records/job-kind'
import { type EmergencyKind, emergencies } from '@almanac/records/procedure-ask'
import { type VisitOutcome, visitOutcomeWords } from '@almanac/records/visit-outcome'
import { type VisitStop, visitStops } from '@almanac/records/visit-stop'
import { outcomesOfKind } from '@almanac/service-rules/close-out/safe-ending'
import { expect, type Page, test } from '@playwright/test'
import { askDatabase } from '../support/ask-database.ts'
import { type Booked, bookAtNight } from '../support/book-visits.ts'
import { finishClosing, walkVisit } from '../support/end-visit.ts'
import { signIn } from '../support/sign-in.ts'
import { startVisit } from '../support/start-visit.ts'

test.use({ viewport: { width: 1024, height: 768 }, serviceWorkers: 'block' })

/**
 * The answers that lead each kind to an end other than "done", a visit for each; where none stands here, “Stop and close out” does. By hand, so that each stop is met:
 * common practice, no source.
 */
const LED_BY: Record<JobKind, Partial<Record<VisitOutcome, readonly VisitStop[]>>> = {
  rebed: {
    'made-safe': ['tank-condition/thread', 'drain-clear/beads'],
    'left-as-found': ['bypass-holds/cannot'],
    condemned: ['tank-condition/cracked'],
  },
  'annual-visit': { 'made-safe': ['brine-draw/none'], 'left-as-found': ['stop-case/lead-line'], condemned: ['stop-case/cracked-tank'] },
  cleaning: { 'made-safe': ['drain-clear/beads'], 'left-as-found': ['stop-case/asbestos'], condemned: ['stop-case/cracked-tank'] },
  inspection: { 'made-safe': ['stop-case/cracked-tank'], 'left-as-found': ['stop-case/boil-water'] },
  repair: { 'made-safe': ['fault/distributor'], 'left-as-found': ['stop-case/permit'], condemned: ['stop-case/cracked-tank'] },
  'warranty-return': { 'made-safe': ['fault/distributor'], 'left-as-found': ['stop-case/crawl-space'] },
  installation: { 'made-safe': ['brine-draw/none'], 'left-as-found': ['bypass-holds/cannot'] },
  exchange: {
    'made-safe': ['drain-clear/beads'],
    'left-as-found': ['bypass-holds/cannot'],
    condemned: ['stop-case/cracked-tank'],
  },
  delivery: {},
  emergency: { 'made-safe': ['left-as/in-bypass'], condemned: ['burst-from/tank'] },
}
type End = { kind: JobKind; outcome: VisitOutcome; stop: VisitStop | null; happened: EmergencyKind }
const HAPPENED: EmergencyKind = 'beads'
/** Every end of every kind, by each way that leads there. */
const ENDS: readonly End[] = jobKinds.flatMap((kind) =>
  outcomesOfKind[kind].flatMap((outcome): End[] => {
    if (kind === 'emergency' && outcome === 'done') return emergencies.map((happened) => ({ kind, outcome, stop: null, happened }))
    return (LED_BY[kind][outcome] ?? [null]).map((stop) => ({
      ...{ kind, outcome, stop, happened: stop === 'burst-from/tank' ? 'burst' : HAPPENED },
    }))
  }),
)
/** What each end makes of the job, as the dispatcher is told: by hand. */
const JOB_AFTER: Record<VisitOutcome, 'closed' | 'proposed'> = {
  done: 'closed',
  'bed-not-at-fault': 'closed',
  condemned: 'closed',
  'made-safe': 'proposed',
  'left-as-found': 'proposed',
  'no-access': 'proposed',
}
const RENEWS: readonly JobKind[] = ['rebed', 'exchange']
/** Ends that take the old bed, by hand: the tank was opened, or must not be used again. */
const endsBed = ({ kind, outcome }: End) =>
  outcome === 'condemned' || (RENEWS.includes(kind) && (outcome === 'done' || outcome === 'made-safe'))
/** Ends with a new bed in the tank, by hand: the resin was poured. */
const beginsBed = ({ kind, outcome, stop }: End) => RENEWS.includes(kind) && (outcome === 'done' || stop === 'drain-clear/beads')
/** Places without a bed: a new softener that nobody has entered yet, and salt for the door. */
const WITHOUT_BED: readonly JobKind[] = ['installation', 'delivery']

/** The job's page as the office gets it. */
async function officeSees(office: Page, jobId: string) {
  const answer = await office.request.post('/api/rpc/jobs/get', { data: { json: { jobId } }, headers: { 'x-csrf-token': 'orpc' } })
  const { json } = (await answer.json()) as {
    json: { state: string; stateReason: string | null; visits: { state: string; outcome: string | null; notes: string | null }[] }
  }
  return {
    state: json.state,
    stateReason: json.stateReason,
    visits: json.visits.map(({ state, outcome, notes }) => ({ state, outcome, notes })),
  }
}

/** What the visit did to beds, and whether anything of it was set aside. */
async function leftBehind({ visitId, bedId }: Booked) {
  const [found] = await askDatabase<{ ended: boolean; began: number; aside: number; condemned: boolean }>(
    `select exists (select from bed b where b.id = $2::uuid and b.ended_visit_id = v.id) as ended, (select count(*)::int from bed b where b.began_visit_id = v.id) as began,
       (select count(*)::int from set_aside s where s.visit_id = v.id) as aside,
       exists (select from job j join softener o on o.id = j.softener_id where j.id = v.job_id and o.condemned_day is not null) as condemned
     from visit v where v.id = $1`,
    [visitId, bedId],
  )
  return found
}

test('each kind of visit is walked to each end it may have: closed so on the tablet, told so at the office, nothing set aside', async ({
  page,
  browser,
}) => {
  test.setTimeout(900_000)
  const visits = await bookAtNight(
    ENDS.map((one) => one.kind),
    { atBeds: jobKinds.filter((kind) => !WITHOUT_BED.includes(kind)), from: 100, hour: 2, minutes: 4 },
  )
  const elsewhere = await browser.newContext()
  const office = await elsewhere.newPage()
  await signIn(office, 'dispatcher')
  await signIn(page, 'technician')
  const met = new Set<VisitStop>()
  const shown = new Set<VisitOutcome>()
  for (const [at, end] of ENDS.entries()) {
    const { kind, outcome, stop, happened } = end
    const visit = visits[at] as Booked
    await test.step(`${kind}: ${outcome}${stop ? ` by ${stop}` : ''}`, async () => {
      await page.goto(`/visits/${visit.visitId}`)
      await startVisit(page, 'Start visit', /^(Next step|Close out)$/)
      const way = outcome === 'done' ? 'to-the-end' : (stop ?? 'stop-and-close-out')
      await walkVisit(page, way, happened)
      const offered = await page.locator('main input[name=outcome]').evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value))
      if (stop) {
        met.add(stop)
        expect(offered).not.toContain('done')
      } else expect(offered).toEqual(outcomesOfKind[kind])
      const reason = `${kind} ended as ${outcome}`
      await finishClosing(page, outcome, reason)
      await expect(page.getByText(`Closed out: ${visitOutcomeWords[outcome].toLowerCase()}. Sent.`)).toBeVisible({ timeout: 30_000 })

      const returns = JOB_AFTER[outcome] === 'proposed'
      expect(await officeSees(office, visit.jobId)).toEqual({
        state: JOB_AFTER[outcome],
        stateReason: returns ? reason : null,
        visits: [{ state: 'closed', outcome, notes: outcome === 'done' ? null : reason }],
      })
      expect(await leftBehind(visit)).toEqual({
        ended: endsBed(end),
        began: beginsBed(end) ? 1 : 0,
        condemned: outcome === 'condemned',
        aside: 0,
      })
      if (shown.has(outcome)) return
      // Once for each end, on the page itself.
      shown.add(outcome)
      await office.goto(`/jobs/${visit.jobId}`)
      await expect(office.getByText(visitOutcomeWords[outcome].toLowerCase(), { exact: true }).first()).toBeVisible()
      if (returns) await expect(office.getByText(`Reason: ${reason}`)).toBeVisible()
      else await expect(office.getByText(/^Closed on /)).toBeVisible()
    })
  }
  expect([...met].sort()).toEqual([...visitStops].sort())
  await elsewhere.close()
})
