import { checkSuite } from "./check-suite.ts";
import { bandSuite } from "./suites.ts";

checkSuite(bandSuite);
