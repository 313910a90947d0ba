export const price = (text: string) => Number(text.replace(',', '.'))
