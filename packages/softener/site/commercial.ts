import { COMMERCIAL_DIAMETER_IN } from '../kit/job-weight.ts'
import type { FilledTank } from './evaluate-site.ts'

/** From so much resin a softener is no house's, whatever its tank; common practice, no source. */
export const COMMERCIAL_FROM_FT3 = 6

/** Whether a softener is larger than a house's, so that a house's use and peak say nothing of its site. */
export const isCommercial = ({ fill, shell }: Pick<FilledTank, 'fill' | 'shell'>): boolean =>
  (shell?.diameterIn ?? 0) >= COMMERCIAL_DIAMETER_IN || fill.resinFt3 >= COMMERCIAL_FROM_FT3
