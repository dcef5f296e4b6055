import { describeSheets } from "./describe-sheets.ts";
import { UNDERSIDE_SHEETS } from "./sheets.ts";

describeSheets("of the underside", UNDERSIDE_SHEETS);
