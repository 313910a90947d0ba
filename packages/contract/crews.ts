import { oc } from '@orpc/contract'
import * as z from 'zod'
import { ClockTime, command, Day, Id, Version, Why } from './shared.ts'

/** Weekdays from 1, Monday, to 7. */
const Shift = z
  .object({ weekday: z.number().int().min(1).max(7), from: ClockTime, until: ClockTime })
  .refine(({ from, until }) => from < until, 'a shift cannot end before it begins')
/** A break of so many minutes that begins within its span. */
const Break = z
  .object({ from: ClockTime, until: ClockTime, minutes: z.number().int().min(5).max(240) })
  .refine(({ from, until }) => from <= until, 'a break cannot begin after its span')
const Skill = z
  .string()
  .max(90)
  .regex(/^(lifting|plumbing-licence|valve:[A-Za-z0-9.-]+)$/, 'is no skill')
const Place = z.object({ latitude: z.number().min(-90).max(90), longitude: z.number().min(-180).max(180) })

const personShape = {
  name: z.string().trim().min(1, 'enter a name for the person').max(80),
  /** Does all work; otherwise only what `skills` names. */
  doesAll: z.boolean(),
  skills: z.array(Skill).max(60),
  /** Takes the vehicle home: crews with this person start and end there. */
  startsAtHome: z.boolean(),
  home: Place.nullable(),
  /** Minor units; null for the firm's own price. */
  overtimeMinorPerHour: z.number().int().min(0).max(100_000_000).nullable(),
  /** Empty: the firm's hours on every day it works. */
  shifts: z.array(Shift).max(7),
  breaks: z.array(Break).max(4),
}
/** Who signs in as this person; null for nobody. */
const signsIn = { personId: Id.nullable() }
const vehicleShape = {
  name: z.string().trim().min(1, 'enter a name for the vehicle').max(80),
  volumeFt3: z.number(),
  weightLb: z.number(),
}

/** Days off, or off the road; `untilDay` is the last one, null until further notice. */
export const Absence = z.object({ id: Id, version: Version, fromDay: Day, untilDay: Day.nullable(), word: z.string().nullable() })
export type Absence = z.infer<typeof Absence>

export const CrewPerson = z.object({ id: Id, version: Version, left: z.boolean(), ...personShape, ...signsIn, absences: z.array(Absence) })
export type CrewPerson = z.infer<typeof CrewPerson>
export const CrewVehicle = z.object({ id: Id, version: Version, left: z.boolean(), ...vehicleShape, absences: z.array(Absence) })
export type CrewVehicle = z.infer<typeof CrewVehicle>

export const AddPerson = command(personShape)
export type AddPerson = z.infer<typeof AddPerson>
export const ChangePerson = command({ colleagueId: Id, version: Version, left: z.boolean(), ...personShape, ...signsIn })
export type ChangePerson = z.infer<typeof ChangePerson>
export const AddVehicle = command({ ...vehicleShape, why: Why })
export type AddVehicle = z.infer<typeof AddVehicle>
export const ChangeVehicle = command({ vehicleId: Id, version: Version, left: z.boolean(), ...vehicleShape, why: Why })
export type ChangeVehicle = z.infer<typeof ChangeVehicle>
export const AddAbsence = command({
  of: z.enum(['person', 'vehicle']),
  /** The person or vehicle. */
  subjectId: Id,
  fromDay: Day,
  untilDay: Day.nullable(),
  word: z.string().trim().max(60).nullable(),
  /** The visits booked on those days are known. */
  confirmed: z.boolean().optional(),
})
export type AddAbsence = z.infer<typeof AddAbsence>
export const TakeBackAbsence = command({ absenceId: Id, version: Version })
export type TakeBackAbsence = z.infer<typeof TakeBackAbsence>
const Changed = z.object({ id: Id, version: Version })
const post = (path: `/${string}`) => oc.route({ method: 'POST', path })

export const crews = {
  /** Everyone who stands or stood on day sheets, and all vehicles. Days away that are over are left out. */
  list: oc.route({ method: 'GET', path: '/crews' }).output(
    z.object({
      people: z.array(CrewPerson),
      vehicles: z.array(CrewVehicle),
      /** Who can sign in, to say which of them a person is. */
      members: z.array(z.object({ personId: Id, name: z.string() })),
    }),
  ),
  /** What the firm has down of the one who asks; null for someone who stands on no sheets. */
  own: oc.route({ method: 'GET', path: '/crews/own' }).output(z.object({ own: CrewPerson.nullable() })),
  addPerson: post('/crews/people').input(AddPerson).output(Changed),
  changePerson: post('/crews/people/change').input(ChangePerson).output(Changed),
  addVehicle: post('/crews/vehicles').input(AddVehicle).output(Changed),
  changeVehicle: post('/crews/vehicles/change').input(ChangeVehicle).output(Changed),
  addAbsence: post('/crews/absences').input(AddAbsence).output(Changed),
  takeBackAbsence: post('/crews/absences/take-back').input(TakeBackAbsence).output(Changed),
}
