/** One rule of lead-safe work with where it is written. */
export interface LeadRule {
  readonly text: string
  readonly source: string
}

/** The federal rule for renovation in housing from before 1978, as far as painters meet it; states may ask for more. */
export const leadPractice: readonly LeadRule[] = [
  {
    text: 'A certified firm does the work; a certified renovator is assigned to it, directs it and teaches the others.',
    source: '40 CFR 745.81, 745.89, 745.90',
  },
  {
    text: 'The pamphlet goes to the owner, and to an adult who lives there, no more than 60 days before the work; the receipt is signed.',
    source: '40 CFR 745.84',
  },
  {
    text: 'Warning signs are up before the work begins and stay until cleaning is verified. Nobody but the crew goes in. Ways out stay open.',
    source: '40 CFR 745.85(a)(1)',
  },
  {
    text: 'What can be carried goes out, the rest is covered and sealed. Openings and ducts are closed with plastic; plastic is taped over the floor 6 ft beyond the work.',
    source: '40 CFR 745.85(a)(2)(i)',
  },
  {
    text: 'Never: open flame or torch; power sanding, grinding or planing without shroud and HEPA exhaust; a heat gun at 1,100 °F or more.',
    source: '40 CFR 745.85(a)(3)',
  },
  {
    text: 'Chips and plastic are wetted or folded inwards, bagged and closed before they leave the room; no dust leaves it.',
    source: '40 CFR 745.85(a)(4)',
  },
  {
    text: 'Then clean: pick up chips, HEPA vacuum from the top down, wet-wipe, wet-mop the floor.',
    source: '40 CFR 745.85(a)(5)',
  },
  {
    text: 'Verify: look for dust; wipe each sill with a wet cloth, floors at most 40 sq ft to a cloth, and compare with the card. Clean and wipe again where it fails; if it fails twice, wait an hour or until dry and use a dry cloth.',
    source: '40 CFR 745.85(b)',
  },
  {
    text: 'Records are kept for three years; a copy of what was done goes to the owner with the final invoice, at the latest 30 days after the work.',
    source: '40 CFR 745.86',
  },
  {
    text: 'Up to 6 sq ft of paint to a room is exempt as minor repair, as long as no window is replaced, nothing painted is demolished and nothing of the Never list is done.',
    source: '40 CFR 745.83',
  },
]
