export const width = (share: number) => ({ width: `${share * 100}%` })
