import { checkSuite } from "../check-suite.ts";
import { lifeSuite } from "./life-suite.ts";

checkSuite(lifeSuite);
