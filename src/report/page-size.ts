/** A4 in page units (96 to the inch), and the margin on all sides. */
export const PAGE = { width: 793.7, height: 1122.52, margin: 48 } as const;
/** Width between the margins. */
export const CONTENT = PAGE.width - 2 * PAGE.margin;
