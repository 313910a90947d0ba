export const tidy = (value: number) => Number(value.toFixed(1))
export const yearOf = (day: string) => Number(day.slice(0, 4))
