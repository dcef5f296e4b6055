import { checkSuite } from "./check-suite.ts";
import { complianceSuite } from "./suites.ts";

checkSuite(complianceSuite);
