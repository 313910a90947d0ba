import { newId } from '@almanac/runtime/ids'
import type { Prisma } from '../../packages/database/generated/client.ts'
import { asRecorded } from './beds-story.ts'
import { addDays, asDate, earlier } from './days.ts'
import type { SupplyPlan } from './firms.ts'
import type { Random } from './random.ts'
import type { SiteStory } from './site-story.ts'

export type JobPlan = {
  jobId: string
  siteId: string
  softenerId: string
  bedId: string | null
  day: string
  kind: string
  minutes: number
  crewSize: number
  endedBedId: string | null
  beganBedId: string | null
}

/** The rows of one firm, table by table, ready for createMany. */
export function emptyRows() {
  return {
    customer: [] as Prisma.CustomerCreateManyInput[],
    contact: [] as Prisma.ContactCreateManyInput[],
    consent: [] as Prisma.ConsentCreateManyInput[],
    waterSupply: [] as Prisma.WaterSupplyCreateManyInput[],
    supplyPeriod: [] as Prisma.SupplyPeriodCreateManyInput[],
    site: [] as Prisma.SiteCreateManyInput[],
    tenure: [] as Prisma.TenureCreateManyInput[],
    softener: [] as Prisma.SoftenerCreateManyInput[],
    tank: [] as Prisma.TankCreateManyInput[],
    valve: [] as Prisma.ValveCreateManyInput[],
    preTreatment: [] as Prisma.PreTreatmentCreateManyInput[],
    bed: [] as Prisma.BedCreateManyInput[],
    waterTest: [] as Prisma.WaterTestCreateManyInput[],
    inspection: [] as Prisma.InspectionCreateManyInput[],
    job: [] as Prisma.JobCreateManyInput[],
  }
}
export type Rows = ReturnType<typeof emptyRows>

/** Adds a supply with its periods; answers its id. */
export function addSupply(rows: Rows, companyId: string, plan: SupplyPlan, units: 'us' | 'metric'): string {
  const id = newId()
  rows.waterSupply.push({ companyId, id, name: plan.name, kind: plan.kind })
  for (const { fromDay, ...period } of plan.periods) {
    const hardness =
      units === 'us' ? { value: period.hardnessGpg, unit: 'gpg' } : { value: Math.round(period.hardnessGpg * 17.118), unit: 'mg/L' }
    const entered = { hardness, ...(period.residualMgL === null ? {} : { residual: { value: period.residualMgL, unit: 'mg/L' } }) }
    rows.supplyPeriod.push({ companyId, id: newId(), waterSupplyId: id, fromDay: asDate(fromDay), entered, ...period })
  }
  return id
}

const MINUTES: Record<string, number> = { 'annual-visit': 45, cleaning: 60, repair: 75, inspection: 45, rebed: 150 }

function addPeople(rows: Rows, random: Random, companyId: string, siteId: string, story: SiteStory): void {
  const customerId = newId()
  const soldOn = story.soldBy ? addDays(story.installed, random.int(700, 4000)) : null
  rows.customer.push({
    companyId,
    id: customerId,
    name: story.customer,
    reference: random.chance(0.6) ? `C${1000 + rows.customer.length}` : null,
  })
  const contactId = newId()
  rows.contact.push({
    companyId,
    id: contactId,
    customerId,
    siteId: null,
    role: 'payer',
    name: story.contact,
    phone: story.phone,
    email: story.email,
  })
  for (const { channel, granted } of story.consents)
    if (channel !== 'email' || story.email)
      rows.consent.push({
        companyId,
        id: newId(),
        contactId,
        channel,
        granted,
        source: 'visit',
        sinceDay: asDate(addDays(story.installed, 400)) as Date,
      })
  if (story.soldBy && soldOn) {
    const formerId = newId()
    rows.customer.push({ companyId, id: formerId, name: story.soldBy })
    rows.tenure.push({
      companyId,
      id: newId(),
      siteId,
      customerId: formerId,
      fromDay: asDate(story.installed),
      toDay: asDate(addDays(soldOn, -1)),
    })
  }
  rows.tenure.push({ companyId, id: newId(), siteId, customerId, fromDay: asDate(soldOn ?? story.installed), toDay: null })
}

function addTests(rows: Rows, random: Random, companyId: string, siteId: string, story: SiteStory): void {
  for (const { day, kind } of story.happenings) {
    if (kind === 'rebed' || !random.chance(story.well ? 0.5 : 0.22)) continue
    const period = story.supply.periods.filter((one) => one.fromDay === null || one.fromDay <= day).at(-1)
    if (!period) continue
    const hardnessGpg = Math.max(1, Math.round(period.hardnessGpg * random.between(0.9, 1.1) * 2) / 2)
    const total = period.residualMgL === null ? null : Math.round(period.residualMgL * random.between(0.6, 1.1) * 10) / 10
    const free = total === null ? null : period.disinfectant === 'chloramine' ? Math.round(total * 0.05 * 10) / 10 : total
    const carbon = story.carbonFrom !== null && story.carbonFrom <= day
    rows.waterTest.push({
      companyId,
      id: newId(),
      siteId,
      day: asDate(day) as Date,
      point: carbon && random.chance(0.5) ? 'softener-inlet' : 'raw',
      hardnessGpg,
      ...(carbon || total === null || !random.chance(0.6) ? {} : { totalChlorineMgL: total, freeChlorineMgL: free }),
      ironMgL: story.well ? Math.round(period.ironMgL * random.between(0.8, 1.25) * 100) / 100 : null,
      entered: { hardness: { value: hardnessGpg, unit: 'gpg' } },
      source: 'visit',
    })
  }
}

/** Adds a whole site; answers the jobs that were done there, for the day sheets of recent years. */
export function addSite(
  rows: Rows,
  random: Random,
  companyId: string,
  region: string,
  supplyId: string,
  story: SiteStory,
  anchorDay: string,
): JobPlan[] {
  const siteId = newId()
  const { label, street, town, postcode, access, tank } = story
  const address = {
    label,
    street,
    town,
    region,
    postcode,
    latitude: story.place?.latitude ?? null,
    longitude: story.place?.longitude ?? null,
  }
  rows.site.push({ companyId, id: siteId, ...address, accessNotes: access, waterSupplyId: supplyId })
  addPeople(rows, random, companyId, siteId, story)
  const softenerId = newId()
  const twin = story.tanks.length > 1
  rows.softener.push({
    companyId,
    id: softenerId,
    siteId,
    label: story.business ? 'Plant softener' : 'House softener',
    arrangement: twin ? 'twin-alternating' : 'single',
    peopleServed: story.people,
  })
  rows.valve.push({
    companyId,
    id: newId(),
    softenerId,
    label: 'Control valve',
    control: random.chance(0.6) ? 'meter' : 'timer',
    tubeOdIn: tank.diameterIn >= 14 ? 1.5 : 1.05,
    backwashGpm: random.chance(0.5) ? Math.round(tank.diameterIn ** 2 * 0.0055 * 4.4 * 10) / 10 : null,
  })
  if (story.carbonFrom)
    rows.preTreatment.push({ companyId, id: newId(), softenerId, kind: 'carbon', fromDay: asDate(story.carbonFrom), source: 'visit' })
  const lastVisit = story.happenings.at(-1)?.day ?? null
  const bedIds: string[][] = []
  story.tanks.forEach((beds, position) => {
    const tankId = newId()
    const known = random.chance(0.93)
    const size = `${tank.diameterIn}x${tank.heightIn}`
    rows.tank.push({
      companyId,
      id: tankId,
      softenerId,
      position: position + 1,
      diameterIn: known ? tank.diameterIn : null,
      heightIn: known ? tank.heightIn : null,
      nominalGrains: known ? null : Math.round(tank.volumeFt3 * 32) * 1000,
      sizeAsWritten: known ? size : `${Math.round(tank.volumeFt3 * 32)},000 grain`,
      factSources: { size: known ? 'label on the tank' : 'old customer list' },
    })
    bedIds.push(
      beds.map((bed) => {
        const id = newId()
        const when = asRecorded(random, bed.began, anchorDay)
        const seen = bed.ended === null ? (lastVisit && lastVisit > bed.began ? lastVisit : bed.began) : bed.ended
        const unknownKind = when.written === null || random.chance(0.1)
        rows.bed.push({
          companyId,
          id,
          tankId,
          resinKind: unknownKind ? 'unknown' : bed.resinKind,
          volumeFt3: known ? tank.volumeFt3 : null,
          gravelLb: known && random.chance(0.8) ? tank.gravelLb : null,
          beganEarliest: asDate(when.earliest),
          beganLatest: asDate(when.latest ? earlier(when.latest, seen) : null),
          beganAsWritten: when.written,
          lastSeenDay: asDate(seen),
          endedEarliest: asDate(bed.ended),
          endedLatest: asDate(bed.ended),
          endCause: bed.cause,
          factSources: { volumeFt3: 'work sheet', began: when.written ? 'old customer list' : 'not recorded', lastSeenDay: 'last visit' },
        })
        return id
      }),
    )
  })
  addTests(rows, random, companyId, siteId, story)
  return story.happenings.map((one) => {
    const beds = bedIds[one.tank] ?? []
    const bedId = beds[one.bed] ?? null
    const plan: JobPlan = {
      jobId: newId(),
      siteId,
      softenerId,
      bedId,
      day: one.day,
      kind: one.kind,
      minutes: MINUTES[one.kind] ?? 60,
      crewSize: one.kind === 'rebed' ? 2 : 1,
      endedBedId: one.kind === 'rebed' ? bedId : null,
      beganBedId: one.kind === 'rebed' ? (beds[one.bed + 1] ?? null) : null,
    }
    rows.job.push({
      companyId,
      id: plan.jobId,
      siteId,
      softenerId,
      bedId,
      kind: one.kind,
      state: 'closed',
      minutes: plan.minutes,
      crewSize: plan.crewSize,
      closedDay: asDate(one.day),
    })
    return plan
  })
}
