export const display = { locale: 'en-US' }
