import { checkSuite } from "./check-suite.ts";
import { geometrySuite } from "./suites.ts";

checkSuite(geometrySuite);
