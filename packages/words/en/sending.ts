/** What waits on the tablet to be sent, and what became of it. */
export const sending = {
  waiting: 'Waiting to send ({count})',
  noSignal: 'No signal. {count, plural, one {1 entry is} other {# entries are}} saved here and sent automatically.',
  sendingNow: 'Sending {count, plural, one {1 entry} other {# entries}}…',
  sendNow: 'Send now',
  signIn: 'Sign in again to send {count, plural, one {1 entry} other {# entries}}. They’re saved here.',
  toSignIn: 'Sign in',
  noAccess: 'Your access here has ended. {count, plural, one {1 entry is} other {# entries are}} saved on this tablet; call the office.',
  otherCompany: 'Switch back to this company to send {count, plural, one {1 entry} other {# entries}}.',
  otherPerson:
    'Someone else is signed in here now. {count, plural, one {1 entry of yours is} other {# entries of yours are}} saved here; sign in yourself to send.',
  cannotKeep: 'This tablet can’t save your entries. Stay on this page until they’re sent.',
  notSent: 'This wasn’t saved and couldn’t be sent. Your entries are still on this page; try again with a connection.',
  told: '{site}: the office has your record, but couldn’t take it in. {reason}',
  heard: 'OK',
  stuck: '{count, plural, one {1 entry} other {# entries}} can’t be sent. Call the office; they stay on this tablet.',
  asOf: 'No connection. This is from {time}.',
  leaving: 'Sending what waits, then signing out…',
  leaveTitle: 'Not sent yet',
  leaveText:
    '{waiting, plural, =0 {} one {1 entry waits to be sent. } other {# entries wait to be sent. }}{drafts, plural, =0 {} one {1 visit isn’t finished. } other {# visits aren’t finished. }}If you keep them, they wait for your next sign-in here. Nobody else sees them.',
  leaveKeep: 'Keep for my next sign-in',
  leaveThrow: 'Throw them away',
  emptyTitle: 'Nothing is saved here yet',
  emptyText: 'Open the app once with a connection and sign in. Then today’s and tomorrow’s work is here without one too.',
  cancel: 'Cancel',
} as const
