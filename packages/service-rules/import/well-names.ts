import { normaliseText } from './normalise.ts'

/** "Well", "private well", "own bore", "pozo privado", "Hausbrunnen": the water of one home, whichever home it is said of. */
const ownWell =
  /^(?:on )?(?:an? |the )?(?:(?:private|own|domestic|house|home|drilled|dug|deep|shallow|their|his|her) )*(?:well|bore(?: ?hole)?)(?: water)?$|^pozo(?: (?:privado|propio))?$|^(?:eigen|haus|eigener |privat|privater )?brunnen$/

/** True where a list names no supply but says that a home has a well. */
export const isOwnWell = (supplyName: string): boolean => ownWell.test(normaliseText(supplyName))

const aWell = /\b(?:wells?|bore(?: ?holes?)?)(?: water)?(?: \d+)?$|^(?:private|own|shared) well\b|\bpozo\b|brunnen$/

/** True where the name of a supply says that it is a well or several; "Well Street main" and "Wells town" are towns'. */
export const namesWell = (supplyName: string): boolean => aWell.test(normaliseText(supplyName))
