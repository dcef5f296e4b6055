import { Sheet } from "../shell/sheet.tsx";

/** Begins a car line from the silhouettes of its axles. */
export const BeginPage = () => (
  <Sheet
    name="Begin a car line"
    sub="from the silhouettes of its axles"
    place="Families"
    titleBlock={{ title: "Begin a car line", note: "rung scaled", rows: [[{ label: "Sheet", value: "1 of 1" }]] }}
    margin={<h2 className="heading">Begin</h2>}
  >
    <div className="page" />
  </Sheet>
);
