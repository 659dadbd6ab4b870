import type { Operation } from '../specification/types.ts'

/** What hands take along for a kind of work and bring home again; common practice. */
const toolsFor: readonly (readonly [string, readonly Operation[]])[] = [
  ['Drop cloths', ['protectRoom']],
  ['Stepladders and a plank', ['protectRoom', 'dustDown', 'coat']],
  ['Raking light', ['dustDown', 'inspect', 'touchUp']],
  ['Screwdrivers, small hammer, pry bar', ['takeOff', 'loosenHanging']],
  ['Covers for alarms', ['coverAlarm']],
  ['Vacuum with HEPA filter, soft brush', ['vacuum', 'dustOff', 'dustDown', 'cleanDaily']],
  ['Buckets, sponges, gloves', ['wash', 'washMildew', 'washOffSize', 'washOffCalcimine']],
  ['Scrapers with sharp blades', ['scrape', 'stripWallpaper']],
  ['Sprayer and wide scraper', ['stripWallpaper']],
  ['Crack opener', ['openCrack']],
  ['Spray bottle', ['dampCrack']],
  ['Screw gun', ['driveFastener', 'reattachPlaster']],
  ['Putty knives 2 and 6 in, mud pan', ['fill', 'fillSmall', 'tapeCrack', 'puttySash']],
  ['Trowel 12 in', ['skim']],
  ['Sanding blocks, pole sander', ['sand', 'sandFill', 'sandPatch']],
  ['Caulk gun', ['caulk']],
  ['Sash knife', ['freeSash', 'easeSash']],
  ['Glass scraper', ['scrapeGlass']],
  ['Roller frames 9 and 4 in, trays, extension pole', ['prime', 'coat', 'sealChalk', 'sealBare']],
  ['Brush comb and spinner', ['prime', 'coat']],
]

/** The day on which each tool is first needed, by the first day of each operation. */
export function toolsByDay(
  firstDays: ReadonlyMap<Operation, string>,
): readonly { readonly tool: string; readonly date: string }[] {
  return toolsFor.flatMap(([tool, operations]) => {
    const [date] = operations.flatMap((operation) => firstDays.get(operation) ?? []).toSorted()
    return date === undefined ? [] : [{ tool, date }]
  })
}
