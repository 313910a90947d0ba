export const said = (at: Date): string => at.toLocaleTimeString('en-GB')
