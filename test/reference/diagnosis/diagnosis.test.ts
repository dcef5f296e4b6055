import { checkSuite } from "../check-suite.ts";
import { diagnosisSuite } from "./diagnosis-suite.ts";

checkSuite(diagnosisSuite);
