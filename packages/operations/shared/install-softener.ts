import type { NewSoftener } from '@almanac/contract/site-commands'
import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import { judgeInTank } from '@almanac/service-rules/amounts/judge-in-tank'
import { tankRoom } from '@almanac/softener/tanks/tank-room'
import { convertVolume } from '@almanac/units/volume'
import { checkAmounts, enteredOf } from './check-amounts.ts'
import type { CompanyFacts } from './company-facts.ts'
import { type Began, checkBedDays, readBegan, readTankSize, sourceWords } from './read-typed-facts.ts'

type TankReading = ReturnType<typeof readTankSize>

/**
 * Takes down a softener that stands at a site: its tanks, two where it is a twin, and the bed in each. Every fact may be unknown; each known one keeps where
 * it came from. Does not rewrite the site's search words: its caller does.
 */
export async function installSoftener(
  tx: Tx,
  command: Command,
  company: CompanyFacts,
  siteId: string,
  input: NewSoftener,
): Promise<{ softenerId: string; bedIds: string[] }> {
  const tank = readTankSize(input.tankSize)
  const began = readBegan(input.began, company)
  checkBedDays({ beganEarliest: began?.earliestDay ?? null, lastSeenDay: input.lastSeenDay, endedLatest: null, company })
  const { volume, volumeWhy } = input
  const room = tank && tankRoom(tank.diameterIn, tank.heightIn, company)
  const judge = room ? (value: number, unit: string) => judgeInTank('resin', value, unit, room) : undefined
  checkAmounts({ volume: volume && { kind: 'resin', ...volume, judge } }, volumeWhy ? { volume: volumeWhy } : undefined)
  const twin = input.arrangement !== 'single' || (tank?.tankCount ?? 1) > 1
  const softenerId = newId()
  await tx.softener.create({
    data: {
      companyId: command.companyId,
      id: softenerId,
      siteId,
      label: input.label || (twin ? 'Twin softener' : 'Softener'),
      location: input.location || null,
      arrangement: twin && input.arrangement === 'single' ? 'twin-alternating' : input.arrangement,
    },
  })
  const from = sourceWords(input.source, company.today)
  const bedIds: string[] = []
  for (const position of twin ? [1, 2] : [1]) bedIds.push(await placeTank(tx, command, { softenerId, position, tank, began, input, from }))
  await command.audit('softener taken down', 'softener', softenerId, { siteId, bedIds })
  await command.announce('softener', softenerId, 1)
  await command.enqueue('forecast-beds', { bedIds, cause: 'edit' })
  return { softenerId, bedIds }
}

type Placed = { softenerId: string; position: number; tank: TankReading; began: Began; input: NewSoftener; from: string }

async function placeTank(tx: Tx, command: Command, { softenerId, position, tank, began, input, from }: Placed): Promise<string> {
  const tankId = newId()
  const bedId = newId()
  const { companyId } = command
  await tx.tank.create({
    data: {
      companyId,
      id: tankId,
      softenerId,
      position,
      diameterIn: tank?.diameterIn ?? null,
      heightIn: tank?.heightIn ?? null,
      nominalGrains: tank?.nominalGrains ?? null,
      sizeAsWritten: input.tankSize || null,
      factSources: tank ? { tankSize: from } : {},
    },
  })
  const { volume, volumeWhy, lastSeenDay, resinKind } = input
  const volumeFt3 = volume ? convertVolume(volume.value, volume.unit, 'ft3') : (tank?.resinVolumeFt3 ?? null)
  const known = { resinKind: resinKind === 'unknown' ? null : resinKind, volumeFt3, began, lastSeenDay }
  await tx.bed.create({
    data: {
      companyId,
      id: bedId,
      tankId,
      resinKind,
      volumeFt3,
      beganEarliest: dateOf(began?.earliestDay ?? null),
      beganLatest: dateOf(began?.latestDay ?? null),
      beganAsWritten: began?.asWritten ?? null,
      lastSeenDay: dateOf(lastSeenDay),
      entered: enteredOf({ volume }, volumeWhy ? { volume: volumeWhy } : undefined),
      factSources: Object.fromEntries(Object.entries(known).flatMap(([fact, value]) => (value === null ? [] : [[fact, from]]))),
    },
  })
  return bedId
}
