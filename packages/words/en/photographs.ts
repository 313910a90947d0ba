/** Photographs and the customer's signature. */
export const photographs = {
  'kind/label': 'Label',
  'kind/as-found': 'As found',
  'kind/old-bed': 'Old bed',
  'kind/as-left': 'As left',
  'refused/name': 'A signature comes with the name of who signed, and nothing else does. Nothing was saved; sign again.',
  'refused/tooMany': 'This visit has {most} pictures already, the most it can hold. This one was not saved.',
  'refused/otherBytes': 'The picture arrived damaged, so it was not saved. It is sent again from the start.',
  'refused/offset': 'The picture goes on elsewhere. Nothing was saved twice; it is sent on from there.',
} as const
