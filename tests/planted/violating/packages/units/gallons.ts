export const gallons = 1
