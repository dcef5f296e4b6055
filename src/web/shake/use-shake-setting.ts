import { useCallback, useMemo } from "react";
import { useDragged } from "../geometry/use-dragged.ts";
import { type ShakeSearch, VARIATION_MM } from "./shake-search.ts";

/** The disc and the speed a bush without its fluid is looked at with. */
export interface ShakeSetting {
  /** Thickness variation of the disc, mm. */
  readonly variation: number;
  /** Speed at which it is felt, km/h; null: nobody said. */
  readonly felt: number | null;
}

/** The setting of the address, as it is dragged. */
export function useShakeSetting(
  search: ShakeSearch,
  write: (search: ShakeSearch) => void,
): readonly [ShakeSetting, (setting: ShakeSetting) => void] {
  const { variation_mm, felt_kmh } = search;
  const addressed = useMemo(
    () => ({ variation: variation_mm ?? VARIATION_MM.usual, felt: felt_kmh ?? null }),
    [variation_mm, felt_kmh],
  );
  const writeSetting = useCallback(
    ({ variation, felt }: ShakeSetting) =>
      write({ variation_mm: variation, ...(felt === null ? {} : { felt_kmh: felt }) }),
    [write],
  );
  return useDragged(addressed, writeSetting);
}
