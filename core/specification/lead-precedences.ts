import { cutsIntoPaint } from './disturbed.ts'
import { makesDust } from './operation-facts.ts'
import type { Precedence } from './order.ts'
import type { PlannedStep, StepMaker } from './planned-step.ts'
import { byOperation, firstCoatSteps, stepsInOrder } from './room-precedences.ts'
import { isDustyPreparation } from './rules/dust.ts'

/**
 * The order of lead-safe work in a room: signs and sheeting before anything cuts into old paint; when nothing more is scraped or
 * sanded, the sheeting is bagged, the room cleaned and the cleaning proved; then come the finish coats.
 */
export function leadPrecedences(
  maker: StepMaker,
  whole: readonly PlannedStep[],
  work: readonly PlannedStep[],
): readonly Precedence[] {
  const of = (...operations: readonly string[]) => byOperation(whole, ...operations)
  const signs = of('postSigns')
  const sheeting = of('sheetFloor', 'sealOpenings')
  const [bagging, cleaning, check] = [of('bagSheeting'), of('cleanFinal'), of('wipeCheck')]
  if ([signs, sheeting, bagging, cleaning, check].flat().length === 0) return []
  const disturbing = work.filter(cutsIntoPaint)
  const dusty = work.filter((each) => cutsIntoPaint(each) || isDusty(each))
  const say = (ruleId: string, reason: string) => ({ ruleId, reason })
  const closedFirst = say('lead-signs', 'The room is closed off before anything in it cuts into old paint.')
  const sheetedFirst = say('lead-sheeting', 'The sheeting is down before anything cuts into old paint.')
  const cleanedLast = say('lead-final-cleaning', 'It is cleaned when nothing more is scraped or sanded.')
  const provedFirst = say('lead-final-cleaning', 'The cleaning is proved before the finish coats.')
  return [
    ...stepsInOrder(maker, signs, [...sheeting, ...disturbing], closedFirst, true),
    ...stepsInOrder(maker, of('protectRoom'), sheeting, sheetedFirst, false),
    ...stepsInOrder(maker, sheeting, disturbing, sheetedFirst, true),
    ...stepsInOrder(maker, disturbing, of('cleanDaily'), cleanedLast, true),
    ...stepsInOrder(
      maker,
      [...dusty, ...byOperation(work, 'vacuum'), ...of('vacuum')],
      bagging,
      cleanedLast,
      true,
    ),
    ...stepsInOrder(maker, of('cleanDaily'), bagging, cleanedLast, true),
    ...stepsInOrder(maker, of('cleanDaily', 'bagSheeting'), [...cleaning, ...check], cleanedLast, true),
    ...stepsInOrder(
      maker,
      [...dusty, ...of('vacuum'), ...sheeting],
      [...cleaning, ...check],
      cleanedLast,
      true,
    ),
    ...stepsInOrder(maker, cleaning, check, cleanedLast, true),
    ...stepsInOrder(
      maker,
      [...bagging, ...cleaning, ...check],
      [...firstCoatSteps(work), ...of('unmask', 'refitHanging', 'putBack', 'cleanUp', 'inspect')],
      provedFirst,
      true,
    ),
  ]
}

/** Sanding of fills and patches too; sanding between coats is not. */
function isDusty({ step, role }: PlannedStep): boolean {
  return (
    makesDust(step.operation) &&
    isDustyPreparation({ operation: step.operation, ordinal: role.split('/')[1] ?? '' })
  )
}
