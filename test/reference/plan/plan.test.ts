import { checkSuite } from "../check-suite.ts";
import { planSuite } from "./plan-suite.ts";

checkSuite(planSuite);
