import { checkSuite } from "./check-suite.ts";
import { rubberSuite } from "./doors/rubber-suite.ts";

checkSuite(rubberSuite);
