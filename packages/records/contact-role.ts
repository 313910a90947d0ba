/** What a contact is to a site. */
export const contactRoles = ['payer', 'occupier', 'landlord', 'key-holder'] as const
export type ContactRole = (typeof contactRoles)[number]

export const contactRoleWords: Readonly<Record<ContactRole, string>> = {
  payer: 'Payer',
  occupier: 'Occupant',
  landlord: 'Landlord',
  'key-holder': 'Key-holder',
}
