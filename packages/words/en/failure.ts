/** What went wrong on the way to the server. */
export const failure = {
  unreachable: 'Can’t reach the server. What you entered is still here; try again when you have a connection.',
} as const
