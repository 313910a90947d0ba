/** What a contact is to a site: a key for each value of `contactRoles`. */
export const contactRole = {
  payer: 'Payer',
  occupier: 'Occupant',
  landlord: 'Landlord',
  'key-holder': 'Key-holder',
} as const
