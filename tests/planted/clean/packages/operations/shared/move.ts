export const move = 1
