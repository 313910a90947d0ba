import { inCompany } from '@almanac/database/in-company'
import { readCrews, readOwnCrewPerson } from '@almanac/database/read/crews'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { DAY, makeFirm } from '../jobs/test-firm.ts'
import { addAbsence } from './add-absence.ts'
import { addPerson } from './add-person.ts'
import { addVehicle } from './add-vehicle.ts'
import { changePerson } from './change-person.ts'
import { changeVehicle } from './change-vehicle.ts'
import { signInAsColleague } from './colleague-sign-in.ts'
import { takeBackAbsence } from './take-back-absence.ts'

const RUTH = {
  ...{ name: 'Ruth Ames', doesAll: false, skills: ['lifting'], startsAtHome: true, home: { latitude: 41.7, longitude: -88.4 } },
  ...{ overtimeMinorPerHour: 5_200, shifts: [{ weekday: 4, from: '09:00', until: '15:00' }], breaks: [] },
}
const command = () => ({ commandId: newId() })

beforeAll(() => setClock(() => new Date('2026-12-02T16:00:00Z')))
afterAll(() => setClock())

describe('people', () => {
  test('are added and changed, with the version seen; the trail keeps neither name nor home', async () => {
    const firm = await makeFirm()
    const { id } = await addPerson(firm, { ...command(), ...RUTH })
    const values = { ...RUTH, colleagueId: id, left: false, personId: firm.personId }
    await changePerson(firm, { ...command(), ...values, version: 1, doesAll: true })
    await expect(changePerson(firm, { ...command(), ...values, version: 1 })).rejects.toMatchObject({
      code: 'version-conflict',
      detail: { current: { doesAll: true }, sent: { doesAll: false } },
    })
    expect((await readCrews(firm, DAY)).people).toMatchObject([{ name: 'Ruth Ames', doesAll: true, home: RUTH.home, version: 2 }])
    const trail = await inCompany(firm, (tx) => tx.auditEntry.findMany({ where: { companyId: firm.companyId } }))
    expect(trail).toHaveLength(2)
    expect(JSON.stringify(trail)).not.toMatch(/Ruth|41\.7/)
  })

  test('who join as one of them are that one; who join as nobody are somebody new, under their own name, once', async () => {
    const firm = await makeFirm()
    const { id } = await addPerson(firm, { ...command(), ...RUTH })
    const joins = (personId: string, link: string, colleagueId: string | null, name: string) =>
      signInAsColleague({ companyId: firm.companyId, personId }, { commandId: link, colleagueId, name })
    const [ruth, tomas, link] = [newId(), newId(), newId()]
    await joins(ruth, newId(), id, 'R. Ames')
    await joins(tomas, link, null, 'Tomas Lund')
    await joins(tomas, link, null, 'Tomas Lund')
    expect(await joins(tomas, newId(), null, 'Tomas Lund')).toEqual({ linked: false })
    expect((await readCrews(firm, DAY)).people.map((one) => [one.name, one.personId])).toEqual([
      ['Ruth Ames', ruth],
      ['Tomas Lund', tomas],
    ])
  })

  test('see their own, and nobody else’s', async () => {
    const firm = await makeFirm()
    const { id } = await addPerson(firm, { ...command(), ...RUTH })
    await addPerson(firm, { ...command(), ...RUTH, name: 'Callum Orr' })
    expect(await readOwnCrewPerson(firm, DAY)).toBeNull()
    await changePerson(firm, { ...command(), ...RUTH, colleagueId: id, version: 1, left: false, personId: firm.personId })
    expect(await readOwnCrewPerson(firm, DAY)).toMatchObject({ id, name: 'Ruth Ames' })
    expect(await readOwnCrewPerson({ ...firm, personId: newId() }, DAY)).toBeNull()
  })

  test('cannot start at a home that nobody wrote down, nor leave while they stand on a sheet to come', async () => {
    const firm = await makeFirm()
    await expect(addPerson(firm, { ...command(), ...RUTH, home: null })).rejects.toMatchObject({ code: 'invalid' })
    const { id } = await addPerson(firm, { ...command(), ...RUTH })
    const sheet = newId()
    const { companyId } = firm
    const hours = { startsAt: new Date(`${DAY}T15:00:00Z`), endsAt: new Date(`${DAY}T23:00:00Z`) }
    await inCompany(firm, async (tx) => {
      await tx.crewDay.create({ data: { companyId, id: sheet, day: new Date(DAY), name: 'Ruth', ...hours } })
      await tx.crewDayMember.create({ data: { companyId, id: newId(), crewDayId: sheet, colleagueId: id } })
    })
    const leave = { ...RUTH, colleagueId: id, version: 1, left: true, personId: null }
    await expect(changePerson(firm, { ...command(), ...leave })).rejects.toThrow('Ruth Ames is still on a day sheet')
    await inCompany(firm, (tx) => tx.crewDayMember.deleteMany({ where: { companyId, colleagueId: id } }))
    await changePerson(firm, { ...command(), ...leave })
    expect((await readCrews(firm, DAY)).people).toMatchObject([{ left: true }])
  })
})

describe('days away', () => {
  test('are written down for a person or a vehicle, taken back, and gone once they are over', async () => {
    const firm = await makeFirm()
    const { id: vehicleId } = await addVehicle(firm, { ...command(), name: 'van 2', volumeFt3: 8, weightLb: 900 })
    await changeVehicle(firm, { ...command(), vehicleId, version: 1, left: false, name: 'van 2', volumeFt3: 12, weightLb: 900 })
    const away = { of: 'vehicle' as const, subjectId: vehicleId, word: 'brakes' }
    const added = await addAbsence(firm, { ...command(), ...away, fromDay: '2026-12-01', untilDay: DAY })
    await addAbsence(firm, { ...command(), ...away, fromDay: '2026-11-01', untilDay: '2026-11-02' })
    const vehicles = async () => (await readCrews(firm, DAY)).vehicles
    expect(await vehicles()).toMatchObject([{ volumeFt3: 12, absences: [{ fromDay: '2026-12-01', untilDay: DAY, word: 'brakes' }] }])
    await takeBackAbsence(firm, { ...command(), absenceId: added.id, version: 1 })
    expect(await vehicles()).toMatchObject([{ absences: [] }])
    await expect(takeBackAbsence(firm, { ...command(), absenceId: added.id, version: 1 })).rejects.toMatchObject({
      code: 'version-conflict',
    })
    await expect(addAbsence(firm, { ...command(), ...away, fromDay: DAY, untilDay: '2026-12-01' })).rejects.toMatchObject({
      code: 'invalid',
      message: expect.stringMatching(/cannot run from Dec \d, 2026 to Dec 1, 2026/),
    })
    await expect(addAbsence(firm, { ...command(), ...away, of: 'person', fromDay: DAY, untilDay: null })).rejects.toMatchObject({
      code: 'not-found',
    })
  })
})
