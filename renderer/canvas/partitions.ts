import { inches, millimetres } from '../../core/units/length.ts'

/** Walls between rooms are drawn this thick until something is known behind them: 4 1/2 in, or 115 mm. Our own choice. */
export const partitions = { imperial: inches(4.5), metric: millimetres(115) } as const
