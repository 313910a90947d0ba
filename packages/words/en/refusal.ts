/** Why the server did not do something. `code/…` is said where the cause has no words of its own in this language. */
export const refusal = {
  closedAlready: 'This visit was closed out already. This second close-out changed nothing.',
  calledOff:
    'The office called this visit off. Nothing was changed; your entries are still on this tablet. Call the office: once they book it again, the new visit offers them.',
  otherKind: 'This visit is for another kind of job ({kind}). Nothing was saved; open the visit again.',
  incomplete: 'The close-out is not complete, so nothing was saved. {missing}',
  amount: '{sentence} Nothing was saved.',
  notBooked: 'This visit is {state}, so it cannot be started. Nothing was changed.',
  startedCalledOff: 'The office called this visit off. Call the office before you go on.',
  otherPerson: 'Someone else is signed in on this device now. Nothing was done; reload the page.',
  doneByOthers: 'Another crew closed this job, or is at it now.',
  numberUsed: 'Another entry with this number was taken in before.',
  secondDevice: 'Another device closed this visit. These entries were made on a second one and aren’t on record.',
  unreadable: 'This entry is of a form that this server doesn’t know.',
  lost: '{count, plural, one {1 entry} other {# entries}} of this tablet never arrived.',
  landedCalledOff: 'The office had called this visit off. The crew did it all the same, and it is on record.',
  landedOtherCrew: 'Another crew than the one booked did this visit. It is on record.',
  'code/invalid': 'This could not be read, so nothing was saved.',
  'code/conflict': 'This does not go together with what is on record, so nothing was changed.',
  'code/unauthenticated': 'You are not signed in. Nothing was changed; sign in and try again.',
  'code/forbidden': 'Your role may not do this. Nothing was changed; ask the owner of your firm if you should.',
  'code/not-found': 'There is no such record in this company. Nothing was changed; go back and open it from the list.',
  'code/version-conflict':
    'Someone changed this since you opened it. Yours was not saved; both versions are shown, choose what should stand.',
  'code/too-large': 'More was sent than is read here. Nothing was saved; send less at a time.',
  'code/command-reused': 'This was already sent with other contents. The first version stands; load the page again to see it.',
  'code/rate-limited': 'Too many requests came from you. Nothing was changed by this one; wait a minute and try again.',
  'code/unavailable':
    'The server can’t answer right now, so we can’t tell whether this was saved. Try again in a moment; nothing is saved twice.',
  'code/misconfigured': 'The server is not set up right. Nothing was saved; tell whoever runs it.',
  'code/unexpected': 'Something went wrong on our side. Nothing was saved; try again, and if it stays, tell us the number below.',
} as const
