export const zone = () => process.env.TZ
