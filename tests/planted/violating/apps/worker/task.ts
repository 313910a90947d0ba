export const task = 1
