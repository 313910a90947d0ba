import type { Tx } from '../client.ts'

export type ConsentWrite = { id: string; contactId: string; channel: string; granted: boolean }

/** Writes consents by contact and channel; a row that says the same already is left with its day. */
export async function upsertConsents(tx: Tx, companyId: string, consents: readonly ConsentWrite[], today: string): Promise<void> {
  await tx.$executeRaw`
    insert into consent as c (company_id, id, contact_id, channel, granted, source, since_day)
    select ${companyId}::uuid, n.id, n."contactId", n.channel, n.granted, 'import', ${today}::date
    from jsonb_to_recordset(${JSON.stringify(consents)}::jsonb) as n(id uuid, "contactId" uuid, channel text, granted boolean)
    on conflict (company_id, contact_id, channel) do update
      set granted = excluded.granted, source = 'import', since_day = excluded.since_day, version = c.version + 1
      where c.granted is distinct from excluded.granted`
}
