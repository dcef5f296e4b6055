import { describeSheets } from "./describe-sheets.ts";
import { PLACE_SHEETS } from "./sheets.ts";

describeSheets("of no car line", PLACE_SHEETS);
