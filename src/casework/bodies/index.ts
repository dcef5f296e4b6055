export { formatBodiesCsv } from "./bodies-csv.ts";
export { isBall, placeOfFault } from "./bodies-fault.ts";
export { doubtWords, endWords, partWords, rubberWords } from "./bodies-words.ts";
export { computeBodies } from "./compute-bodies.ts";
export { computeBodiesHold } from "./compute-bodies-hold.ts";
export { STAND_IN_SPRING } from "./stand-in-spring.ts";
