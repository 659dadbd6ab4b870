import type { HouseRule } from '../rule.ts'
import { number } from '../step-requests.ts'

/**
 * Lead-safe work as work: what the federal renovation rule asks of a room in which more than the published area of old paint is
 * disturbed. `lead-steps.ts` makes the steps; their reasons, numbers and switches are kept here. Wording of 745.85(a)(4) to (5) and
 * (b) is from memory except where `reference` pages gave it; state rules may be stricter and come first.
 */
function leadRule(facts: Pick<HouseRule, 'id' | 'title' | 'reason' | 'source' | 'numbers'>): HouseRule {
  return {
    ...facts,
    level: 'house',
    theme: 'lead',
    found: 'A room in which more old paint is disturbed than the rule exempts.',
    safety: 'lead',
    on: true,
    order: [],
  }
}

const leadSigns = leadRule({
  id: 'lead-signs',
  title: 'Signs, and the room closed off',
  reason:
    'Signs at the way in say what goes on and keep people out until the cleaning is proved; belongings are out or covered and sealed. State rules may ask for more.',
  source: '40 CFR 745.85(a)(1)',
  numbers: {},
})

const leadSheeting = leadRule({
  id: 'lead-sheeting',
  title: 'Sheeting on the floor, over ducts and doors',
  reason:
    'No dust leaves the work area: plastic is taped over the floor 6 ft beyond the work, or further where chips fall further, ducts are closed and covered, doors are hung with sheeting.',
  source: '40 CFR 745.85(a)(2)(i)',
  numbers: {
    reachFeet: number(
      6,
      'ft',
      'How far the sheeting reaches beyond the work, at least',
      '40 CFR 745.85(a)(2)(i)(D)',
    ),
    ductsPerRoom: number(1, 'ducts', 'Duct openings of a room, to be closed and covered'),
  },
})

const leadTools = leadRule({
  id: 'lead-tools',
  title: 'Tools with HEPA extraction',
  reason:
    'Old paint is scraped and sanded misted or with tools that draw the dust off through a HEPA filter: never dry by machine without a shroud.',
  source: '40 CFR 745.85(a)(3)(ii) (shroud and HEPA exhaust: memory)',
  numbers: {
    slowerPercent: number(15, '%', 'How much longer scraping and sanding takes with hose, shroud or mist'),
  },
})

const leadDailyCleaning = leadRule({
  id: 'lead-daily-cleaning',
  title: 'Clean down at the end of each day',
  reason:
    'Chips are picked up and the sheeting is vacuumed with HEPA before anybody leaves; tools and people leave the room without dust on them.',
  source: '40 CFR 745.85(a)(4) to (5) (memory); common practice',
  numbers: {},
})

const leadFinalCleaning = leadRule({
  id: 'lead-final-cleaning',
  title: 'Final cleaning and wipe check',
  reason:
    'When nothing more is scraped or sanded, the sheeting is bagged and everything is vacuumed with HEPA, wiped and mopped wet; then each sill and each stretch of floor is wiped with a cloth and compared with the card, before the finish coats and before anybody moves back.',
  source: '40 CFR 745.85(a)(5) and (b); 40 sq ft of floor to a cloth: 745.85(b) (memory)',
  numbers: {
    floorPerCloth: number(40, 'sq ft', 'Most floor wiped with one cloth', '40 CFR 745.85(b) (memory)'),
    sheetingPerBag: number(200, 'sq ft', 'Sheeting that fills one bag'),
  },
})

const leadPapers = leadRule({
  id: 'lead-papers',
  title: 'Pamphlet and records',
  reason:
    'Once for the house: the pamphlet goes to the owner, and to whoever lives there, no more than 60 days before the work, against a receipt; what was done is written down and kept for three years.',
  source: '40 CFR 745.84 (pamphlet), 745.86 (records)',
  numbers: {},
})

export const leadWorkRules = [
  leadSigns,
  leadSheeting,
  leadTools,
  leadDailyCleaning,
  leadFinalCleaning,
  leadPapers,
] as const
