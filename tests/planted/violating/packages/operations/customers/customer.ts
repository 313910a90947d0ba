export const customer = 1
