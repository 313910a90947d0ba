/** Standard deviations of a normal distribution between its 10 and its 90% point: twice 1.2816 (normal table). */
export const TENTH_TO_TENTH = 2.563
