import type { Link, LinkedProblem, LinkedVisit } from './linked/linked-problem.ts'

interface RawInstance {
  readonly patients: readonly {
    readonly id: string
    readonly time_window: readonly [number, number]
    readonly required_caregivers: readonly { readonly service: string; readonly duration?: number }[]
    readonly synchronization?: { readonly type: string; readonly distance?: readonly [number, number] }
  }[]
  readonly services: readonly { readonly id: string; readonly default_duration: number }[]
  readonly caregivers: readonly { readonly id: string; readonly abilities: readonly string[] }[]
  readonly distances: readonly (readonly number[])[]
}

/**
 * Reads an instance with linked visits in the format of Ceschia, Di Gaspero, Rosati & Schaerf (2024, doi 10.1111/itor.13585), which carries those of Mankowska,
 * Meisel & Bierwirth (2014). Cost = (distance + largest lateness + total lateness) / 3; distance is also the drive's duration; everyone starts at 0 in place 0.
 * Throws a sentence when the text is no such instance.
 */
export function readCrewsOfTwo(text: string): LinkedProblem {
  const raw = JSON.parse(text) as RawInstance
  const lists: readonly unknown[] = [raw.patients, raw.services, raw.caregivers, raw.distances]
  if (!lists.every(Array.isArray)) {
    throw new Error('This is no instance with linked visits: patients, services, caregivers and distances are expected.')
  }
  const usual = new Map(raw.services.map((service) => [service.id, service.default_duration]))
  const visits = raw.patients.map((patient, i): LinkedVisit => {
    const link = readLink(patient.synchronization)
    return {
      id: patient.id,
      place: i + 1,
      windows: [{ from: patient.time_window[0], to: patient.time_window[1] }],
      needs: patient.required_caregivers.map((need) => ({ skill: need.service, ticks: need.duration ?? usual.get(need.service) ?? 0 })),
      ...(link === null ? {} : { link }),
    }
  })
  const table = Float64Array.from(raw.distances.flat())
  return {
    visits,
    people: raw.caregivers.map((person) => ({
      id: person.id,
      skills: person.abilities,
      startPlace: 0,
      endPlace: 0,
      shift: { from: 0, to: Number.MAX_SAFE_INTEGER },
      overtimePrice: 0,
    })),
    places: raw.distances.length,
    durations: table,
    distances: table,
    prices: { distance: 1 / 3, lateTick: 1 / 3, mostLate: 1 / 3 },
    lateness: 'priced',
  }
}

function readLink(raw: RawInstance['patients'][number]['synchronization']): Link | null {
  if (raw === undefined) return null
  if (raw.type === 'simultaneous') return { kind: 'together' }
  return { kind: 'after', least: raw.distance?.[0] ?? 0, most: raw.distance?.[1] ?? Number.MAX_SAFE_INTEGER }
}
