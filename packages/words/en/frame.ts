/** What stands around every office page. */
export const frame = {
  closing: 'Your company is being closed. Everything is erased on {day}.',
  takeBack: 'Take it back',
} as const
