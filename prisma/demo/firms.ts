import { addDays } from './days.ts'

export type SupplyPlan = {
  name: string
  kind: 'town' | 'private-well'
  share: number
  towns: readonly string[]
  periods: {
    fromDay: string | null
    disinfectant: string
    residualMgL: number | null
    hardnessGpg: number
    ironMgL: number
    temperatureC: number
    source: string
  }[]
}

export type FirmPlan = {
  name: string
  timeZone: string
  unitSystem: 'us' | 'metric'
  currency: string
  locale: string
  telephone: string
  region: string
  sites: number
  wellShare: number
  crews: { name: string; people: string[]; vehicle: { name: string; volumeFt3: number; weightLb: number } }[]
  rebedsPerMonth: number
  /** Where the crews start, degrees north and east. */
  yard: { latitude: number; longitude: number }
  /** Minutes of lunch and of time in hand, and whose public holidays are kept. */
  day: { lunchMinutes: number; inHandMinutes: number; holidayArea: string }
  phone: (n: number) => string
  postcode: (n: number) => string
  supplies: SupplyPlan[]
}

const LARKMOOR_ZONE = 'America/Chicago'

/** The larger firm on its own day: at midnight in London it is still yesterday there. */
export const larkmoorToday = (dayIn: (timeZone: string) => string): FirmPlan => larkmoor(dayIn(LARKMOOR_ZONE))

/** The larger firm: three town supplies, one of them switched to chloramine some years ago, and private wells with iron. */
export function larkmoor(anchorDay: string): FirmPlan {
  const year = (back: number) => addDays(anchorDay, -back * 365)
  return {
    name: 'Larkmoor Soft Water',
    timeZone: LARKMOOR_ZONE,
    unitSystem: 'us',
    currency: 'USD',
    locale: 'en-US',
    telephone: '(555) 010-2300',
    region: 'Larkmoor County',
    sites: 1500,
    wellShare: 0.15,
    rebedsPerMonth: 11,
    yard: { latitude: 41.72, longitude: -88.44 },
    day: { lunchMinutes: 30, inHandMinutes: 30, holidayArea: 'US' },
    crews: [
      { name: 'Ines & Tomas', people: ['Ines Calder', 'Tomas Reyes'], vehicle: { name: 'van 1', volumeFt3: 14, weightLb: 1400 } },
      { name: 'Ruth & Callum', people: ['Ruth Abney', 'Callum Frith'], vehicle: { name: 'van 2', volumeFt3: 12, weightLb: 1200 } },
      { name: 'Joss & Petra', people: ['Joss Nyland', 'Petra Solano'], vehicle: { name: 'van 3', volumeFt3: 12, weightLb: 1200 } },
      { name: 'Amara', people: ['Amara Boyle'], vehicle: { name: 'small van', volumeFt3: 6, weightLb: 600 } },
    ],
    phone: (n) => `(555) 01${String(Math.floor(n / 100) % 10)}-${String(1000 + ((n * 37) % 9000))}`,
    postcode: (n) => String(60500 + (n % 40)),
    supplies: [
      {
        name: 'Larkmoor town supply',
        kind: 'town',
        share: 0.42,
        towns: ['Larkmoor', 'Nether Lark', 'Quarry End'],
        periods: [
          {
            fromDay: null,
            disinfectant: 'free-chlorine',
            residualMgL: 0.9,
            hardnessGpg: 19,
            ironMgL: 0.05,
            temperatureC: 12,
            source: 'yearly report of the town',
          },
          {
            fromDay: year(7),
            disinfectant: 'chloramine',
            residualMgL: 2.4,
            hardnessGpg: 19,
            ironMgL: 0.05,
            temperatureC: 12,
            source: 'letter of the town, change of disinfectant',
          },
        ],
      },
      {
        name: 'Weir Valley water district',
        kind: 'town',
        share: 0.33,
        towns: ['Weirbridge', 'Alder Rise', 'Fordham Mill'],
        periods: [
          {
            fromDay: null,
            disinfectant: 'free-chlorine',
            residualMgL: 0.5,
            hardnessGpg: 14,
            ironMgL: 0.1,
            temperatureC: 11,
            source: 'yearly report of the district',
          },
          {
            fromDay: year(12),
            disinfectant: 'free-chlorine',
            residualMgL: 1.2,
            hardnessGpg: 15.5,
            ironMgL: 0.1,
            temperatureC: 11,
            source: 'yearly report of the district',
          },
        ],
      },
      {
        name: 'Kestrel Ridge supply',
        kind: 'town',
        share: 0.25,
        towns: ['Kestrel Ridge', 'Pinehollow'],
        periods: [
          {
            fromDay: null,
            disinfectant: 'free-chlorine',
            residualMgL: 0.3,
            hardnessGpg: 23,
            ironMgL: 0.15,
            temperatureC: 10,
            source: 'call to the waterworks',
          },
        ],
      },
    ],
  }
}

/** A smaller firm elsewhere: metric, other zone, other currency. */
export function brackwater(): FirmPlan {
  return {
    name: 'Brackwater Softeners',
    timeZone: 'Europe/Dublin',
    unitSystem: 'metric',
    currency: 'EUR',
    locale: 'en-IE',
    telephone: '+353 1 555 0100',
    region: 'Brackwater',
    sites: 60,
    wellShare: 0.3,
    rebedsPerMonth: 2,
    yard: { latitude: 52.37, longitude: -1.57 },
    day: { lunchMinutes: 0, inHandMinutes: 0, holidayArea: 'IE' },
    crews: [{ name: 'Orla & Finn', people: ['Orla Deane', 'Finn Mackey'], vehicle: { name: 'van', volumeFt3: 10, weightLb: 1000 } }],
    phone: (n) => `+353 1 555 ${String(1000 + ((n * 53) % 9000))}`,
    postcode: (n) => `B${String(10 + (n % 20))} X${String(10 + ((n * 7) % 90))}`,
    supplies: [
      {
        name: 'Brackwater regional scheme',
        kind: 'town',
        share: 1,
        towns: ['Brackwater', 'Saltgate'],
        periods: [
          {
            fromDay: null,
            disinfectant: 'free-chlorine',
            residualMgL: 0.4,
            hardnessGpg: 17.5,
            ironMgL: 0.05,
            temperatureC: 11,
            source: 'scheme report',
          },
        ],
      },
    ],
  }
}
