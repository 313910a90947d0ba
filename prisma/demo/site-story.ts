import { weekdayOf } from '@almanac/units/calendar/calendar-day'
import { type BedStory, bedsOfTank } from './beds-story.ts'
import { addDays } from './days.ts'
import type { FirmPlan, SupplyPlan } from './firms.ts'
import { ACCESS, businessName, personName, streetOf } from './names.ts'
import { demoPlace } from './places.ts'
import type { Random } from './random.ts'

const TANKS = [
  { diameterIn: 8, heightIn: 44, volumeFt3: 0.75, gravelLb: 10, share: 0.08 },
  { diameterIn: 9, heightIn: 48, volumeFt3: 1, gravelLb: 12, share: 0.27 },
  { diameterIn: 10, heightIn: 44, volumeFt3: 1.25, gravelLb: 15, share: 0.15 },
  { diameterIn: 10, heightIn: 54, volumeFt3: 1.5, gravelLb: 18, share: 0.32 },
  { diameterIn: 12, heightIn: 52, volumeFt3: 2, gravelLb: 25, share: 0.12 },
  { diameterIn: 13, heightIn: 54, volumeFt3: 2.5, gravelLb: 30, share: 0.06 },
] as const
const LARGE = [
  { diameterIn: 14, heightIn: 65, volumeFt3: 3, gravelLb: 45, share: 0.5 },
  { diameterIn: 16, heightIn: 65, volumeFt3: 4, gravelLb: 60, share: 0.3 },
  { diameterIn: 21, heightIn: 62, volumeFt3: 7, gravelLb: 110, share: 0.2 },
] as const

export type TankPlan = { diameterIn: number; heightIn: number; volumeFt3: number; gravelLb: number }
export type Happening = { day: string; kind: 'annual-visit' | 'cleaning' | 'repair' | 'inspection' | 'rebed'; tank: number; bed: number }

export type SiteStory = {
  label: string
  street: string
  town: string
  postcode: string
  place: { latitude: number; longitude: number } | null
  customer: string
  soldBy: string | null
  contact: string
  phone: string
  email: string | null
  consents: { channel: 'email' | 'phone'; granted: boolean }[]
  access: string | null
  supply: SupplyPlan
  well: boolean
  business: boolean
  people: number | null
  carbonFrom: string | null
  installed: string
  tank: TankPlan
  tanks: BedStory[][]
  happenings: Happening[]
}

function pickShare<T extends { share: number }>(random: Random, list: readonly T[]): T {
  let left = random.next() * list.reduce((sum, one) => sum + one.share, 0)
  for (const one of list) {
    left -= one.share
    if (left <= 0) return one
  }
  return list[0] as T
}

/** A well of one's own: hard, with iron, no disinfectant. */
function wellOf(random: Random, label: string, town: string): SupplyPlan {
  const period = {
    fromDay: null,
    disinfectant: 'none',
    residualMgL: null,
    hardnessGpg: Math.round(random.between(12, 38)),
    ironMgL: Math.round(random.between(0.05, 2.4) * random.next() * 100) / 100 + 0.05,
    temperatureC: 10,
    source: 'test at the first visit',
  }
  return { name: `Well at ${label}`, kind: 'private-well', share: 0, towns: [town], periods: [period] }
}

/** Visits of a site: yearly where there is a contract, else now and then; rebeds on the days the beds changed. */
function happenings(random: Random, tanks: BedStory[][], installed: string, anchorDay: string): Happening[] {
  const list: Happening[] = []
  tanks.forEach((beds, tank) => {
    beds.forEach((bed, index) => {
      if (bed.ended) list.push({ day: bed.ended, kind: 'rebed', tank, bed: index })
    })
  })
  const contract = random.chance(0.62)
  let day = addDays(installed, random.int(200, 500))
  while (day < anchorDay) {
    const kind = random.chance(0.78) ? 'annual-visit' : random.chance(0.5) ? 'cleaning' : random.chance(0.6) ? 'repair' : 'inspection'
    const bed = (tanks[0] ?? []).findLastIndex((one) => one.began <= day)
    list.push({ day, kind, tank: 0, bed: Math.max(0, bed) })
    day = addDays(day, contract ? random.int(320, 420) : random.int(500, 1900))
  }
  // Some customers drift away: nobody has been there for years.
  const lost = random.chance(0.07) ? addDays(anchorDay, -random.int(5, 14) * 365) : null
  return list
    .map((one) => (weekdayOf(one.day) > 5 ? { ...one, day: addDays(one.day, -2) } : one))
    .filter((one) => one.day < anchorDay && (lost === null || one.day < lost || one.kind === 'rebed'))
    .sort((a, b) => (a.day < b.day ? -1 : 1))
}

/** One customer's place with all that happened there. `n` numbers the site, so that streets and phones differ. */
export function siteStory(random: Random, firm: FirmPlan, n: number, anchorDay: string): SiteStory {
  const business = random.chance(0.07)
  const well = random.chance(firm.wellShare)
  const town = pickShare(random, firm.supplies)
  const place = random.pick(town.towns)
  const street = `${random.int(1, 180)} ${streetOf(random)}`
  const contact = personName(random)
  const customer = business ? businessName(random) : contact
  const label = business ? customer : `${street.replace(/^(\d+) (.*)$/, '$2 $1')}`
  const supply = well ? wellOf(random, `${label}, ${place}`, place) : town
  const installed = addDays(anchorDay, -Math.round(365 * (random.chance(0.12) ? random.between(0.2, 3) : random.between(2, 25))))
  const carbonFrom = !well && random.chance(0.1) ? addDays(installed, random.chance(0.5) ? 0 : random.int(300, 3000)) : null
  const tank = pickShare<TankPlan & { share: number }>(random, business ? LARGE : TANKS)
  const twin = business ? random.chance(0.6) : random.chance(0.03)
  const carbon = carbonFrom !== null && carbonFrom <= installed
  const tanks = Array.from({ length: twin ? 2 : 1 }, () => bedsOfTank(random, supply, installed, anchorDay, carbon))
  const answered = random.next()
  return {
    label,
    street,
    town: place,
    postcode: firm.postcode(n),
    place: demoPlace(place, n),
    customer,
    soldBy: !business && random.chance(0.09) ? personName(random) : null,
    contact,
    phone: firm.phone(n),
    email: random.chance(0.72)
      ? `${contact
          .toLowerCase()
          .normalize('NFD')
          .replace(/[^a-z ]/g, '')
          .replace(' ', '.')}${n}@mail.example.com`
      : null,
    consents:
      answered < 0.62
        ? [
            { channel: 'email', granted: true },
            { channel: 'phone', granted: true },
          ]
        : answered < 0.75
          ? [{ channel: 'phone', granted: true }]
          : answered < 0.85
            ? [{ channel: 'email', granted: false }]
            : [],
    access: random.chance(0.45) ? random.pick(ACCESS) : null,
    supply,
    well,
    business,
    people: business ? null : random.chance(0.5) ? random.int(1, 6) : null,
    carbonFrom: carbonFrom !== null && carbonFrom < anchorDay ? carbonFrom : null,
    installed,
    tank,
    tanks,
    happenings: happenings(random, tanks, installed, anchorDay),
  }
}
