const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/** "3 Dec", of 'YYYY-MM-DD': for days near enough that the year goes without saying. */
export const shortDay = (day: string): string => `${Number(day.slice(8))} ${MONTHS[Number(day.slice(5, 7)) - 1]}`

/** "3 Dec 2026", of 'YYYY-MM-DD'. */
export const longDay = (day: string): string => `${shortDay(day)} ${day.slice(0, 4)}`
