/** What every reader of a published schema is told first. */
interface SchemaHead {
  /** The last part of the schema's name, `job-2`. */
  readonly name: string
  readonly title: string
  readonly description: string
}

type Node = { readonly [name: string]: unknown }

/**
 * A published JSON Schema with its name (`$id`: a name, nothing is to be fetched there), title and description, and with a description
 * for each property whose name is in the words below or says its unit. Descriptions that are there already stay.
 */
export function worded(head: SchemaHead, schema: object): object {
  const { $schema, ...rest } = schema as Node
  return {
    ...($schema === undefined ? {} : { $schema }),
    $id: `https://coatwright.example/schemas/${head.name}.schema.json`,
    title: head.title,
    description: head.description,
    ...(withWords(rest) as object),
  }
}

function withWords(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(withWords)
  if (!isNode(node)) return node
  return Object.fromEntries(
    Object.entries(node).map(([name, inner]) => [
      name,
      name === 'properties' && isNode(inner) ? describedProperties(inner) : withWords(inner),
    ]),
  )
}

function describedProperties(properties: Node): Node {
  return Object.fromEntries(
    Object.entries(properties).map(([name, inner]) => {
      const words = wordsOf(name)
      const schema = withWords(inner)
      if (words === undefined || !isNode(schema) || 'description' in schema) return [name, schema]
      return [name, { description: words, ...schema }]
    }),
  )
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function wordsOf(name: string): string | undefined {
  if (Object.hasOwn(propertyWords, name)) return propertyWords[name]
  return endings.find(([ending]) => ending.test(name))?.[1]
}

/** Units and references as names of properties end. */
const endings: readonly (readonly [RegExp, string])[] = [
  [/SqFt$/, 'Square feet.'],
  [/Mm2$/, 'Square millimeters.'],
  [/Ft$/, 'Feet.'],
  [/Inches$/, 'Inches.'],
  [/(Cents|CentsPerHour)$/, 'US cents, whole.'],
  [/Percent$/, 'Percent.'],
  [/ElapsedMinutes$/, 'Minutes by the wall clock, nights included.'],
  [/(PersonMinutes|personMinutes)$/, 'Working minutes of one person.'],
  [/Minutes$/, 'Minutes.'],
  [/Hours$/, 'Hours.'],
  [/Gallons$|^gallons$/, 'US gallons.'],
  [/Mils$/, 'Mils, thousandths of an inch.'],
  [/C$/, 'Degrees Celsius.'],
  [/(Ids)$/, 'Ids of records of this job.'],
  [/Id$/, 'Id of a record of this job.'],
  [/On$/, 'A date, year-month-day.'],
  [/At$/, 'A local moment on site, or a place along a line in millimeters.'],
  [/(Keys)$/, 'Keys that outlive a new specification.'],
  [/Key$/, 'A key that outlives a new specification.'],
  [/(Height|Width|Length|Depth|Girth|Rail)$/, 'Millimeters.'],
  [/^paint[A-Z]/, 'Whether it is painted.'],
  [/day$/, 'Hours of work on that day of the week.'],
]

const propertyWords: Readonly<Record<string, string>> = {
  format: 'Says what kind of file this is.',
  version: 'Number of the form; a reader refuses a higher one than it knows.',
  units: 'The units of all lengths and amounts of money in the file.',
  money: 'Money is in this unit, whole.',
  header: 'The job sheet: client, site, the facts of the house, its air.',
  houseRules: 'Order inside rooms, hours on site, measuring policies and how the price is built.',
  storeys: 'Floors of the house.',
  rooms: 'Rooms, with their outline at the finished face.',
  openings: 'Doors, windows and other holes in walls; one between two rooms is one record.',
  ceilingOpenings: 'Holes in ceilings.',
  trimRuns: 'Baseboards, crowns, rails and caps along walls.',
  builtItems: 'Stairs, radiators, cabinets, shelves and mantels.',
  keptItems: 'What is in the way and stays.',
  existing: 'What is on the surfaces now.',
  conditions: 'What was found wrong.',
  photos: 'Photos of rooms and of what was found; the pictures themselves are apart.',
  underlay: 'The photo or scan of a plan under the sketch of a floor; its width and height are pixels.',
  mmPerPixel: 'Millimeters of the house in one pixel.',
  turnDegrees: 'Degrees clockwise.',
  strength: 'How strong it shows.',
  isShown: 'Whether it is shown.',
  pictures: 'The pictures of the photos, as many as travel with the file.',
  picture: 'SHA-256 of the bytes of a picture.',
  small: 'SHA-256 of the same picture for lists and paper.',
  hash: 'SHA-256 of the bytes, small hexadecimal digits.',
  stage: 'Taken before the work or after it.',
  base64: 'The bytes in base64 (RFC 4648, section 4).',
  holds: 'What has to be known, cured or cleared before a surface is touched.',
  colours: 'Colors of the job.',
  finishes: 'What surfaces shall become.',
  products: 'Product classes with the figures of their labels.',
  crew: 'People, their skills, hours and wages.',
  rates: 'How much of an operation one person does in an hour.',
  rules: 'Rules of the book that this job switches or gives other numbers.',
  pins: 'Passes held by hand at a moment.',
  marks: 'What happened on site, only ever added to.',
  issued: 'Frozen copies of what was given out.',
  options: 'Work the client may choose, as changes to the job.',
  dealings: 'What happened between the shop and its client, only ever added to.',
  changes: 'Changes to the job, made one after the other.',
  oneOf: 'Options with the same word here are alternatives; empty for one that stands alone.',
  set: 'What it becomes; what is not named stays as it is.',
  moreCoats: 'Coats asked for beyond those that the rules count.',
  on: 'Day on which it happened, or what it lies on.',
  number: 'Counted from 1 over those of the job.',
  validUntil: 'Last day on which the quote may be accepted; null for no limit.',
  optionIds: 'Options that were taken.',
  counted: 'The whole job by its hours on that day.',
  why: 'The reason, in words.',
  by: 'Name of who said it.',
  moves: 'What it moves, a sentence for each room.',
  dueOn: 'Day by which it is to be paid; null where none was said.',
  how: 'Cash, check or another way.',
  cents: 'US cents, whole; less than nothing where money went back.',
  when: 'When it is to be paid, in words.',
  id: 'Known by this in this file; the id of a job is like no other anywhere.',
  title: 'Name of the job.',
  jobTitle: 'Name of the job.',
  client: 'Who the work is for.',
  phones: 'Numbers of the client, with whom they reach, one a line.',
  mail: 'Address for electronic mail.',
  access: 'How to get in; for the crew only.',
  paper: 'What the papers of the job are printed on.',
  isDemonstration: 'The job is an invented one.',
  isPutAway: 'Out of the way in the list of jobs, and nothing else.',
  proposalNumber: 'Counted over the proposals of the shop; null until the first is given out.',
  business: 'Who the shop is and what it sells under; the copy of this job.',
  leadCertificate: 'Of the firm, under the renovation rule of the EPA or of a state in its place.',
  proposal: 'How proposals are made; of the numbers, what the next one is.',
  changeOrder: 'What the next one is numbered.',
  invoice: 'What the next one is numbered.',
  validDays: 'Days from the day a proposal is given out.',
  colorsDaysBefore: 'Colors are needed so many days before work starts.',
  prices: 'A price for each room, or one for all.',
  texts: 'Sentences for the client, one a line.',
  notIncluded: 'What the price does not hold.',
  whoMoves: 'Who moves and covers what.',
  hiddenConditions: 'What happens when something is found that could not be seen.',
  paymentSteps: 'Shares of the price in the order in which they fall due.',
  nextNumbers: 'What the next paper of each kind is numbered; counted on the shop sheet only.',
  assumed: 'Parts whose figures or texts are assumptions still.',
  site: 'Where the work is.',
  yearBuilt: 'Year the house was built; null where nobody knows, and then it counts as old.',
  occupied: 'Whether people live in the house during the work.',
  childrenOrPets: 'Whether there are children or pets.',
  planFor: 'What the plan is looked for: what weighs most of pay, days on site and rooms out of use.',
  timeZone: 'IANA name of the zone the site lies in.',
  unitSystem: 'What lengths and areas are shown in.',
  air: 'How the places of work are heated and aired.',
  name: 'As it is called on screen and paper.',
  note: 'Free words.',
  brand: 'Who makes it, as on the can; empty where the shop has not said.',
  code: 'What the store tints the color by; empty where nobody has said.',
  x: 'Millimeters along the plan.',
  y: 'Millimeters across the plan.',
  from: 'Where or when it begins.',
  to: 'Where or when it ends.',
  at: 'Moment on site, or place along a line in millimeters.',
  length: 'Millimeters, or the unit of lengths.',
  width: 'Millimeters.',
  height: 'Millimeters.',
  depth: 'Millimeters; of a color, how far from white it is.',
  offset: 'Millimeters from the corner the wall starts at.',
  sill: 'Millimeters above the floor.',
  rise: 'Millimeters.',
  flatFrom: 'Millimeters along the plan.',
  flatTo: 'Millimeters along the plan.',
  apron: 'Millimeters.',
  girth: 'Developed width of the profile, millimeters.',
  thickness: 'Millimeters.',
  stile: 'Millimeters.',
  muntin: 'Millimeters.',
  level: 'Number of the floor, millimeters above it, or how wide a scope is.',
  count: 'How many.',
  coat: 'What is on the surface; of a step, the number of the finish coat, 0 where it is none.',
  area: 'Square millimeters.',
  date: 'A date, year-month-day.',
  wired: 'Wired alarms are covered for the working hours only.',
  fumes: 'Strong solvent smell.',
  perHour: 'Square feet, feet or pieces that one person does in an hour.',
  source: 'Where the figure or the rule comes from.',
  numbers: 'Numbers of the rule as this job has them, by name.',
  leftOut: 'The written reason for which a safety rule is left out.',
  raised: 'What was put right in an older setting, in words.',
  body: 'By kind and version; what has another version is carried as it is.',
  html: 'The whole paper as it was printed.',
  judged: 'What the plan was judged to be, by the names of its time.',
  bound: 'What no plan can beat; null where that was not worked out.',
  gapDays: 'Days from the best possible at most.',
  minutes: 'Working minutes.',
  before: 'What or which step comes first.',
  after: 'What or which step comes after.',
  totals: 'Sums of what stands below.',
  derivation: 'How the figure came about.',
  lines: 'Lines of the price.',
  labour: 'Hours, step by step.',
  labourBasis:
    'What labor is priced by: an accepted plan, a first plan made the same way each time, or hours without a plan.',
  materials: 'Products, with the containers to buy.',
  optional: 'Offered beside the price.',
  doubts: 'What is not settled.',
  tasks: 'Tasks in the order of the plan.',
  segments: 'Stretches of work between breaks and nights.',
  dryUntil: 'Touch dry then; null for dry work.',
  roomsOutOfUse: 'Stretches in which the household cannot use a room.',
  verdict: 'How good the plan is known to be.',
  passes: 'What one or two people do in one room in one go.',
  roomSets: 'Rooms that are worked together.',
  passOrder: 'Which pass waits for which.',
  min: 'At least so many.',
  max: 'At most so many.',
  steps: 'Steps in an order that works.',
  order: 'Which step waits for which, or the order inside the room.',
  notices: 'What the owner has to know or decide.',
  clashes: 'Rules that contradict one another.',
  because: 'Why the step is there.',
  cautions: 'What may hurt somebody at this step.',
  woodwork: 'The same by kind of woodwork; empty for other surfaces and where only spots are worked.',
  sections: 'Sections of a radiator.',
  leaves: 'Leaves of a door.',
  treads: 'Treads of a stair.',
  risers: 'Risers of a stair.',
  balusters: 'Balusters of a stair.',
  newels: 'Newels of a stair.',
  stringers: 'Stringers of a stair.',
  doors: 'Doors of a cabinet.',
  drawers: 'Drawers of a cabinet.',
  columns: 'Columns or tubes of a radiator.',
  lightsAcross: 'Panes beside one another.',
  lightsDown: 'Panes above one another.',
  times: 'How often, on the days of work.',
  difficultyFactor: 'The rate is multiplied by this for height, access and edges.',
  maxRoomsOutOfUse: '0 is no limit.',
  percent: 'Percent.',
  reachHeightFt: 'Feet from the floor to the highest place.',
  rulesBroken: 'Rules of the judge that the plan breaks.',
  roomDaysOutOfUse: 'Days on which rooms are out of use, added up.',
  productChanges: 'How often somebody changes the product.',
  promisesMoved: 'Promises whose start or people differ.',
  daysFromBestAtMost: 'Days from the best possible at most.',
  usualDays: 'Days it takes as a rule.',
}
