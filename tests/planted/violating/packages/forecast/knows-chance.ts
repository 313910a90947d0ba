export const draw = () => Math.random()
