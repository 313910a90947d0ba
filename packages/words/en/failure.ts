/** What went wrong on the way to the server. */
export const failure = {
  unreachable: 'Can’t reach the server. What you entered is still here; try again when you have a connection.',
  page: 'This page ran into an error.',
  pageKept: 'What was saved is safe. What you typed here and did not save may be gone.',
} as const
