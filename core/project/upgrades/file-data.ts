/** The data of a job file as it was read, before its form is checked. */
export type FileData = Readonly<Record<string, unknown>>

/** Brings the data of a job file from one version to the next. What it does not understand it leaves for the check of the form. */
export type FileUpgrade = (data: FileData) => FileData
