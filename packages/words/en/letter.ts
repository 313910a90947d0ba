/** What a customer is sent: a reminder, and the visit in a calendar. Warm and short: no trade words but softener, resin, salt. */
export const letter = {
  subject: 'The resin of your water softener at {site}',
  dear: 'Dear {name},',
  hello: 'Hello,',
  dueBetween:
    'The resin in your water softener at {site} is getting old. It will likely need replacing between {from} and {until}. Worn-out resin lets hard water through and can break up.',
  dueBefore:
    'The resin in your water softener at {site} is getting old. It will likely need replacing before {until}. Worn-out resin lets hard water through and can break up.',
  dueSoon:
    'The resin in your water softener at {site} is getting old. It will likely need replacing soon. Worn-out resin lets hard water through and can break up.',
  forecast:
    'This is a forecast from its age and your water, not a measurement. If something has changed, or others worked on the softener, please tell us.',
  answer: 'Reply to this message or call {phone} to choose a day. If you would rather not hear from us about this, tell us and we’ll stop.',
  answerUs: 'Reply to this message or call us to choose a day. If you would rather not hear from us about this, tell us and we’ll stop.',
  appointment: 'We arrive between {from} and {until}. Please clear a path to the softener.',
} as const
