import { checkSuite } from "../check-suite.ts";
import { secondSolverSuite } from "./second-solver-suite.ts";

checkSuite(secondSolverSuite);
