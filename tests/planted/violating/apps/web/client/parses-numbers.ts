export const price = (text: string) => Number.parseFloat(text)
