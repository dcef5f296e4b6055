export type { Finding } from "./finding.ts";
