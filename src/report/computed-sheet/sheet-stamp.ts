/** What is stamped on a sheet beside what was computed. */
export interface SheetStamp {
  /** The date as it is to be written on the sheet. */
  readonly date: string;
  /** Who makes it; absent = the cell is left out. */
  readonly by?: string;
}
