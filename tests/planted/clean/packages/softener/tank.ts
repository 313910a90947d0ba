export const tank = 1
