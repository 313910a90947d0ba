import { now } from '@almanac/runtime/clock'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import 'server-only'
import { readCrews, readOwnCrewPerson } from '@almanac/database/read/crews'
import { memberNames } from '@almanac/identity/people'
import { addAbsence } from '@almanac/operations/crews/add-absence'
import { addPerson } from '@almanac/operations/crews/add-person'
import { addVehicle } from '@almanac/operations/crews/add-vehicle'
import { changePerson } from '@almanac/operations/crews/change-person'
import { changeVehicle } from '@almanac/operations/crews/change-vehicle'
import { takeBackAbsence } from '@almanac/operations/crews/take-back-absence'
import { notFound } from '@almanac/runtime/errors'
import { can } from '../procedure.ts'

const manage = can('manage:crews').crews

/** Only a member of the firm can be said to be one of its people. */
async function checkMember(companyId: string, personId: string | null): Promise<void> {
  if (personId && !(await memberNames(companyId)).has(personId)) throw notFound('person')
}

export const crews = {
  list: manage.list.handler(async ({ context: { scope, who } }) => {
    const members = [...(await memberNames(scope.companyId))].map(([personId, name]) => ({ personId, name }))
    return { ...(await readCrews(scope, dayIn(who.company.timeZone, now()))), members }
  }),
  own: can('read:own-work').crews.own.handler(async ({ context: { scope, who } }) => ({
    own: await readOwnCrewPerson(scope, dayIn(who.company.timeZone, now())),
  })),
  addPerson: manage.addPerson.handler(({ context, input }) => addPerson(context.scope, input)),
  changePerson: manage.changePerson.handler(async ({ context, input }) => {
    await checkMember(context.scope.companyId, input.personId)
    return changePerson(context.scope, input)
  }),
  addVehicle: manage.addVehicle.handler(({ context, input }) => addVehicle(context.scope, input)),
  changeVehicle: manage.changeVehicle.handler(({ context, input }) => changeVehicle(context.scope, input)),
  addAbsence: manage.addAbsence.handler(({ context, input }) => addAbsence(context.scope, input)),
  takeBackAbsence: manage.takeBackAbsence.handler(({ context, input }) => takeBackAbsence(context.scope, input)),
}
