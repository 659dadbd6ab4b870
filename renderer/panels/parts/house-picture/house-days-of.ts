import { houseDays } from '../../../../core/work-order/house-day.ts'
import { lastAnswer } from '../../../state/last-answer.ts'

/** The house on the days of a plan, shared by Calendar and Site. */
export const houseDaysOf = lastAnswer(houseDays)
