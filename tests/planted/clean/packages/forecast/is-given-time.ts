export const startOf = (day: string) => new Date(`${day}T00:00:00Z`).getTime()
