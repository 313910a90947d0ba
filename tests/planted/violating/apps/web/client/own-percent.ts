export const said = (share: number): string => `${share * 100}% of it`
