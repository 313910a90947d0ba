import { tradePriors } from '@almanac/forecast/priors/trade-priors'

/** The parameters every forecast uses at present: the trade's priors. A fit to the firm's own records will take their place. */
export const PARAMETERS = tradePriors()
