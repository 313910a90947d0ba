export const visit = 1
