import type { Suite } from "../suites.ts";
import { scoreDiagnosis } from "./diagnosis-rows.ts";

export const diagnosisSuite: Suite = {
  title: "Diagnosis",
  about:
    "The textbook chest clinic and two noisy-OR examples as printed; 60 invented networks against summing over every combination of states; 200 invented complaints of up to twelve causes against summing over every subset of causes.",
  score: scoreDiagnosis,
};
