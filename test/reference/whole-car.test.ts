import { checkSuite } from "./check-suite.ts";
import { wholeCarSuite } from "./whole-car/whole-car-suite.ts";

checkSuite(wholeCarSuite);
