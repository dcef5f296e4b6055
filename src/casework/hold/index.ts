export { MOST_BAR, MOST_MOMENT, MOST_PUSH } from "./check-hand-question.ts";
export { computeHandTest } from "./compute-hand-test.ts";
export { computeHold } from "./compute-hold.ts";
export { HAND_MEANS } from "./held-corner.ts";
export { formatForce, seenInWords } from "./hold-words.ts";
