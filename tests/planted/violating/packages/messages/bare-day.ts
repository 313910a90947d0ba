export const since = (fromDay: string): string => `Not yet: it is due from ${fromDay}.`
