/** The least place for the floor plan on a sheet, millimeters on paper; a sheet with more room draws it larger. */
export const planPlace = { width: 66, depth: 42 } as const
