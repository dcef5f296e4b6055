import type { Suite } from "../suites.ts";
import { scoreFiniteLength, scoreHydraulic, scoreRate } from "./rubber-rows.ts";

export const rubberSuite: Suite = {
  title: "Bushes",
  about:
    "Fourteen invented bushes. Closed forms by integration and by a potential solution, finite lengths by finite elements of another program (the program's own forms are fits, to 6 and 0.5 %); the hydraulic bush by harmonic balance, its peaks by grid and golden section.",
  score: () => [...scoreRate(), ...scoreFiniteLength(), ...scoreHydraulic()],
};
