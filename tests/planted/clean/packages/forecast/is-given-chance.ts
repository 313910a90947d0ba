export const draw = (random: () => number) => random()
