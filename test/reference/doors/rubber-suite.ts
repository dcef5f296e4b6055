import type { Suite } from "../suites.ts";
import { scoreFiniteLength, scoreFirmer, scoreHandbook, scoreHydraulic, scoreRate } from "./rubber-rows.ts";

export const rubberSuite: Suite = {
  title: "Bushes",
  about:
    "Fourteen invented bushes. Closed forms by integration and by a potential solution, finite lengths by finite elements of another program (the program's own forms are fits, to 6 and 0.5 %); the hydraulic bush by harmonic balance, its peaks by grid and golden section; the factor of a harder part and its range in 50 digits, slopes by difference, and one such factor from two moduli of a handbook (another relation: to 3 %).",
  score: () => [...scoreRate(), ...scoreFiniteLength(), ...scoreFirmer(), ...scoreHandbook(), ...scoreHydraulic()],
};
