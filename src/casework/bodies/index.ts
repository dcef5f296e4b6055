export { computeBodies, rubberWords } from "./compute-bodies.ts";
