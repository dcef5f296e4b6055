import { checkSuite } from "../check-suite.ts";
import { layoutsSuite } from "./layouts-suite.ts";

checkSuite(layoutsSuite);
