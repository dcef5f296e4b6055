import { useEffect, useState } from "react";
import { checkFamily, type Finding, formatFamily } from "#contract";
import type { Family } from "../car.ts";

/** The page stands before its data are checked anew, milliseconds. */
const AFTER = 200;

const NONE: readonly Finding[] = [];

/** What today's checks object to in a car line that was kept before they came; none while they are not done. */
export const useDoubts = (family: Family | null): readonly Finding[] => {
  const [doubts, setDoubts] = useState(NONE);
  useEffect(() => {
    setDoubts(NONE);
    if (family === null) return;
    const later = setTimeout(() => setDoubts(checkFamily(formatFamily(family))), AFTER);
    return () => clearTimeout(later);
  }, [family]);
  return doubts;
};
