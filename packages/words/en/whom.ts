/** Whom to call about a site. */
export const whom = {
  noPhone: 'no phone number',
  noPhoneRecorded: 'No phone number recorded.',
  noCustomer: 'No customer',
  noCustomerNow: 'No customer at this site now.',
  roleFor: '{role} for {customer}',
  call: 'Call {phone}',
  or: 'or <phone></phone>',
  notCalled: 'Asked not to be called.',
} as const
