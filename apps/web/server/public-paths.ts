/** Where a customer chooses an arrival window. */
export const offerPath = (token: string) => `/arrival/${token}`
/** The chosen window as a calendar file. */
export const offerCalendarPath = (token: string) => `/api/arrival/${token}/calendar`
/** Where a customer answers a reminder; the worker writes the same into mails. */
export const reminderPath = (token: string) => `/reminder/${token}`
/** Where an owner measures their tank. */
export const measurePath = (token: string) => `/measure/${token}`
/** A colleague's calendar, to subscribe to. */
export const calendarPath = (token: string) => `/api/calendar/${token}`
/** Where a company is founded, where an invited person joins, and where someone with a link for it sets a new password. */
export const setUpPath = (token: string) => `/set-up/${token}`
export const joinPath = (token: string) => `/join/${token}`
export const newPasswordPath = (token: string) => `/new-password/${token}`
/** Where a new email is confirmed. */
export const newEmailPath = (token: string) => `/new-email/${token}`
