import type { SettingsTank, SoftenerSettings, WaterFact } from '@almanac/contract/softeners'
import { notFound } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { tankLine } from './site-lines.ts'

const PARTS = {
  site: {
    select: {
      id: true,
      label: true,
      town: true,
      waterSupply: {
        select: {
          name: true,
          periods: { where: { withdrawnAt: null }, orderBy: { fromDay: { sort: 'desc', nulls: 'last' } } },
        },
      },
      waterTests: { where: { withdrawnAt: null }, orderBy: [{ day: 'desc' }, { id: 'desc' }], take: 100 },
    },
  },
  valves: { where: { archivedAt: null, tankId: null }, take: 1 },
  tanks: {
    where: { archivedAt: null },
    orderBy: { position: 'asc' },
    include: {
      beds: { where: { archivedAt: null, endedLatest: null }, orderBy: { id: 'desc' }, take: 1 },
      valves: { where: { archivedAt: null }, take: 1 },
    },
  },
} satisfies Prisma.SoftenerInclude

type Found = Prisma.SoftenerGetPayload<{ include: typeof PARTS }>
type Test = Found['site']['waterTests'][number]
type Period = NonNullable<Found['site']['waterSupply']>['periods'][number]

/** What the record says for setting a softener: its tanks with the beds in service and their valves, and the water that reaches it; null for one that isn't there or was archived. */
export async function softenerSettingsIn(tx: Tx, companyId: string, softenerId: string): Promise<SoftenerSettings | null> {
  const softener = await tx.softener.findFirst({
    where: { companyId, id: softenerId, archivedAt: null, site: { archivedAt: null } },
    include: PARTS,
  })
  if (!softener) return null
  const { site } = softener
  const tests = site.waterTests.filter((test) => test.softenerId === null || test.softenerId === softener.id)
  return {
    id: softener.id,
    label: softener.label,
    arrangement: softener.arrangement as SoftenerSettings['arrangement'],
    peopleServed: softener.peopleServed,
    site: { id: site.id, label: site.label, town: site.town },
    supplyName: site.waterSupply?.name ?? null,
    tanks: softener.tanks.map((tank) => settingsTank(tank, tank.valves[0] ?? softener.valves[0])),
    water: waterAt(tests, site.waterSupply?.periods ?? []),
  }
}

/** The same for the softener's own page. */
export const readSoftenerSettings = (scope: Pick<Scope, 'companyId'>, softenerId: string): Promise<SoftenerSettings> =>
  inCompany(scope, async (tx) => {
    const found = await softenerSettingsIn(tx, scope.companyId, softenerId)
    if (!found) throw notFound('softener')
    return found
  })

function settingsTank(tank: Found['tanks'][number], valve: Found['valves'][number] | undefined): SettingsTank {
  const { version: _version, ...line } = tankLine(tank)
  const bed = tank.beds[0]
  return {
    ...line,
    bed: bed
      ? {
          id: bed.id,
          resinKind: bed.resinKind as NonNullable<SettingsTank['bed']>['resinKind'],
          volumeFt3: bed.volumeFt3,
          gravelLb: bed.gravelLb,
          tubeCutIn: bed.tubeCutIn,
          beganEarliest: dayOf(bed.beganEarliest),
          beganLatest: dayOf(bed.beganLatest),
        }
      : null,
    valve: valve
      ? {
          label: valve.label,
          control: valve.control as NonNullable<SettingsTank['valve']>['control'],
          backwashGpm: valve.backwashGpm,
          tubeOdIn: valve.tubeOdIn,
          cardId: valve.cardId,
        }
      : null,
  }
}

/** Tests outrank the supply: newest first, before the softener only. Temperatures: all that were measured, wherever, and the supply's. */
function waterAt(tests: Test[], periods: Period[]): SoftenerSettings['water'] {
  const before = tests.filter((test) => test.point !== 'softened')
  const tested = (pick: (test: Test) => number | null): WaterFact | null => {
    for (const test of before) {
      const value = pick(test)
      if (value !== null) return { value, from: 'test', day: dayOf(test.day) }
    }
    return null
  }
  const supplied = (pick: (period: Period) => number | null): WaterFact | null => {
    const present = periods[0]
    const value = present ? pick(present) : null
    return value === null || !present ? null : { value, from: 'supply', day: dayOf(present.fromDay) }
  }
  const temperatures: WaterFact[] = [
    ...tests.flatMap(({ temperatureC, day }) =>
      temperatureC === null ? [] : [{ value: temperatureC, from: 'test' as const, day: dayOf(day) }],
    ),
    ...periods.flatMap(({ temperatureC, fromDay }) =>
      temperatureC === null ? [] : [{ value: temperatureC, from: 'supply' as const, day: dayOf(fromDay) }],
    ),
  ].sort((a, b) => a.value - b.value)
  return {
    hardnessGpg: tested((test) => test.hardnessGpg) ?? supplied((period) => period.hardnessGpg),
    ironMgL: tested((test) => test.ironMgL) ?? supplied((period) => period.ironMgL),
    manganeseMgL: tested((test) => test.manganeseMgL),
    dissolvedSolidsMgL: tested((test) => test.dissolvedSolidsMgL),
    coldestC: temperatures[0] ?? null,
    warmestC: temperatures.at(-1) ?? null,
  }
}
