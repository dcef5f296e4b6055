import { checkSuite } from "./check-suite.ts";
import { travelSuite } from "./suites.ts";

checkSuite(travelSuite);
