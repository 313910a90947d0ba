import type { ProcedureContext } from '@almanac/softener/procedure/procedure-types'

/** Two tanks in turn, two at once, and two of which nobody said which. */
const TWINS = [
  { position: 1, of: 2, arrangement: 'twin-alternating' },
  { position: 2, of: 2, arrangement: 'twin-parallel' },
  { position: null, of: 2, arrangement: 'single' },
] as const

const UNKNOWN = [true, false, null]

/** What steps, cautions and questions depend on: pipe, power and bypass each way, the rest beside them in turn. */
export const procedureContexts = (): ProcedureContext[] =>
  UNKNOWN.flatMap((hasBypass) =>
    UNKNOWN.flatMap((valveNeedsPower) =>
      UNKNOWN.flatMap((metalPipe) =>
        ([null, 0, 18] as const).map((gravelLb, i) => ({
          ...{ hasBypass, valveNeedsPower, metalPipe, gravelLb, heightIn: 54, display: { locale: 'en-US', unitSystem: 'us' as const } },
          ...{ waterSource: (['town', 'private-well', null] as const)[(i + Number(metalPipe)) % 3] ?? null },
          ...{ diameterIn: [10, 24, null][i] ?? null, pressurePsi: hasBypass === true ? 95 : null },
          ...{ twin: metalPipe === null ? TWINS[i] : null },
          ...{ resinKind: valveNeedsPower === false ? ('fine-mesh' as const) : null },
          ...{ drain: metalPipe === true ? ('septic' as const) : null, access: valveNeedsPower === true ? ('level' as const) : null },
          ...{ resinVolumeFt3: hasBypass === false ? [1.5, 0.4, null][i] : null, newTubeLengthIn: hasBypass === true ? 52.125 : null },
        })),
      ),
    ),
  )
