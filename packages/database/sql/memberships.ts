import { identityClient } from '../client.ts'

/** A membership that stands, with its company and what of the person is shown in it. */
export type Membership = {
  companyId: string
  role: string
  name: string
  timeZone: string
  unitSystem: string
  currency: string
  paper: string
  locale: string
  language: string | null
  secondStep: boolean
  /** When everything of the company is erased; null: it is not being closed. */
  closesAt: Date | null
}

/** The memberships of a person that stand, the oldest first; of a company that is being closed an owner's alone; in one statement, since every request asks for them. */
export function readMemberships(personId: string): Promise<Membership[]> {
  return identityClient().$queryRaw<Membership[]>`
    select m.company_id as "companyId", m.role, c.name, c.time_zone as "timeZone", c.unit_system as "unitSystem", c.currency, c.paper, c.locale,
      p.language, p.two_factor_enabled as "secondStep", c.closes_at as "closesAt"
    from membership m
    join company c on c.id = m.company_id
    join person p on p.id = m.person_id
    where m.person_id = ${personId}::uuid and m.ended_at is null and (c.closes_at is null or m.role = 'owner')
    order by m.created_at`
}
