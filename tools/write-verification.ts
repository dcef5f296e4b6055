import { writeFileSync } from "node:fs";
import { suites } from "../test/reference/suites.ts";
import { formatVerification, verificationPath } from "../test/reference/verification-page.ts";

writeFileSync(verificationPath, formatVerification(suites.map((suite) => [suite, suite.score()] as const)));
