/** A house as a painter's list has it, one room a line. */
export const twelveRooms = `Hall 4 x 18 x 8-6, 6 dr
Living 15-6 x 13 x 8-6, 3 win, 1 dr, 1 co, 1 fireplace, crown
Dining 14 x 14 x 9, 3 win, 2 dr, crown
Kitchen 12'6" x 11', 2 win, 2 dr, 1 ext door
Entry 6 x 7, 1 front door, 1 co
Bath 5 x 8, 1 win, 1 dr
Upstairs
Stair hall 7 x 15, 1 win, 5 dr
Bedroom 1 12-6 x 12 x 8, 2 win, 2 dr
Closet 2-6 x 6, 1 dr
Bedroom 2 11 x 12, 2 win, 1 dr
Bedroom 3, 10 6 x 10, 2 win, 1 dr
Bath upstairs 6 x 8, 1 win, 1 dr`
