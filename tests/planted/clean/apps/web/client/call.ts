export const call = 1
