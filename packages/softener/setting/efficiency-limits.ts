/**
 * NSF/ANSI 44, efficiency option, as described by the trade press and PNNL: regenerated on demand, at least 3,350 gr per lb of NaCl, at most
 * 5 gal of regeneration water per 1,000 gr.
 */
export const NSF_LEAST_GR_PER_LB = 3350
export const NSF_MOST_GAL_PER_1000_GR = 5
/** California Health and Safety Code 116785, for appliances installed from 2002 on, gr per lb. */
export const CALIFORNIA_LEAST_GR_PER_LB = 4000
/** End of NSF/ANSI 44's capacity run: 1 gpg in the softened water, mg/L as CaCO₃. Taken as the most leakage where no other is asked for. */
export const MOST_LEAKAGE_MG_L = 17.1
