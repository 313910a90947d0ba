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
}

/** The memberships of a person that stand, the oldest first; in one statement, since every request asks for them. */
export function readMemberships(personId: string): Promise<Membership[]> {
  return identityClient().$queryRaw<Membership[]>`
    select m.company_id as "companyId", m.role, c.name, c.time_zone as "timeZone", c.unit_system as "unitSystem", c.currency, c.paper, c.locale,
      p.language, p.two_factor_enabled as "secondStep"
    from membership m
    join company c on c.id = m.company_id
    join person p on p.id = m.person_id
    where m.person_id = ${personId}::uuid and m.ended_at is null
    order by m.created_at`
}
