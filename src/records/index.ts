export { openFamilyFiles } from "./family-files.ts";
