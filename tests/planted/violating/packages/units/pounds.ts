export const pounds = 1
