import { describeSheets } from "./describe-sheets.ts";
import { CAR_LINE_SHEETS } from "./sheets.ts";

describeSheets("of a car line", CAR_LINE_SHEETS);
