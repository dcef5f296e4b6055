import { checkSuite } from "../check-suite.ts";
import { metrologySuite } from "./metrology-suite.ts";

checkSuite(metrologySuite);
