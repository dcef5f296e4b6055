/** Ends of the spring that stands in where a layout alone has none: it carries the wheel on paper and is not drawn. */
export const STAND_IN_SPRING = { from: "stand-in spring, upper end", to: "stand-in spring, lower end" } as const;
