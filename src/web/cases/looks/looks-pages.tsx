import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo, useState } from "react";
import type { PlaceFinding } from "#casework";
import {
  type Detail,
  drawUnderside,
  groupOf,
  groupOfTarget,
  groupWords,
  NOT_LOOKED_AT,
  type PlaceGroup,
} from "#drawing";
import { FittedScene, type SceneRoom } from "../../scene/fitted-scene.tsx";
import type { LoadedFamily } from "../../server/families.ts";
import { useCase } from "../case/case-context.tsx";
import { CaseSheet } from "../case/case-sheet.tsx";
import { isRefusedLook } from "../readings/use-readings.ts";
import type { UnsentEntry } from "../unsent/entry.ts";
import { LooksMargin } from "./looks-margin.tsx";
import { LooksOpened } from "./looks-opened.tsx";
import { NoFamilyPage } from "./no-family-page.tsx";
import { type Looks, useLooks } from "./use-looks.ts";

const groupRoute = getRouteApi("/cases/$visit/underside/$group");

const CORNER_KEYS: readonly { readonly key: string; readonly group: PlaceGroup; readonly does: string }[] = [
  { key: "1", group: "front-right", does: "open the front right corner" },
  { key: "2", group: "front-left", does: "open the front left corner" },
  { key: "3", group: "rear-right", does: "open the rear right corner" },
  { key: "4", group: "rear-left", does: "open the rear left corner" },
  { key: "5", group: "front", does: "open the front axle" },
  { key: "6", group: "rear", does: "open the rear axle" },
];

const leastHeight = () => 530;

/** What the circle beside the selected place shows: its section as it was found, and the first thing that was. */
const detailOf = (finding: PlaceFinding | null): Detail => {
  if (finding === null || finding.grade === null) return { fault: null, words: NOT_LOOKED_AT.toLowerCase() };
  const [first = ""] = finding.found.split(", ");
  if (finding.grade < TORN_FROM) return { fault: null, words: first };
  return { fault: finding.kind === "ball-joint" ? "loose" : "torn", words: first };
};

/** From this grade on a section is drawn as torn or loose. */
const TORN_FROM = 2;

/** Refused readings of the selected place are asked about in the margin; they are not said twice. */
const shownInMargin =
  ({ selected }: Looks) =>
  (entry: UnsentEntry): boolean =>
    isRefusedLook(entry) && entry.look.place === selected?.id;

const WholeCar = ({ loaded }: { readonly loaded: LoadedFamily }) => {
  const looks = useLooks(loaded);
  const { states, selected, held, findingAt } = looks;
  const { family } = loaded;
  const navigate = useNavigate();
  const [scale, setScale] = useState<string | null>(null);
  const open = useCallback(
    (group: PlaceGroup) =>
      void navigate({
        to: "/cases/$visit/underside/$group",
        params: { visit: held.visitId, group },
        search: selected !== null && groupOf(selected) === group ? { at: selected.id } : {},
      }),
    [navigate, held.visitId, selected],
  );
  const selectedId = selected?.id ?? null;
  const opened = selected === null ? null : groupOf(selected);
  const finding = selectedId === null ? null : findingAt(selectedId);
  const draw = useCallback(
    (room: SceneRoom) =>
      drawUnderside(family, { ...room, states, selected: selectedId, opened, detail: detailOf(finding) }),
    [family, states, selectedId, opened, finding],
  );
  const keys = useMemo(
    () => CORNER_KEYS.map(({ key, group, does }) => ({ key, does, run: () => open(group) })),
    [open],
  );
  return (
    <CaseSheet
      stage="underside"
      title="Underside, from below"
      scale={scale}
      keys={keys}
      subject={selectedId}
      marginLow={160}
      shownOnPage={shownInMargin(looks)}
      margin={
        <LooksMargin
          looks={looks}
          how="Tap a corner: it opens as two sheets with every place on it. What is hatched nobody has looked at."
        />
      }
    >
      <FittedScene
        draw={draw}
        leastHeight={leastHeight}
        onScale={setScale}
        onPress={(id) => {
          const group = groupOfTarget(id);
          if (group === null) looks.select(id);
          else open(group);
        }}
      />
    </CaseSheet>
  );
};

const Group = ({ loaded }: { readonly loaded: LoadedFamily }) => {
  const { group } = groupRoute.useParams();
  const looks = useLooks(loaded, group);
  const { visitId } = looks.held;
  const navigate = useNavigate();
  const [scale, setScale] = useState<string | null>(null);
  const keys = useMemo(
    () => [
      {
        key: "w",
        does: "back to the whole car",
        run: () => void navigate({ to: "/cases/$visit/underside", params: { visit: visitId } }),
      },
    ],
    [navigate, visitId],
  );
  return (
    <CaseSheet
      stage="underside"
      title={groupWords(group)}
      scale={scale}
      keys={keys}
      subject={looks.selected?.id ?? null}
      marginLow={160}
      shownOnPage={shownInMargin(looks)}
      margin={<LooksMargin looks={looks} how="Tap a name. What is hatched nobody has looked at." />}
    >
      <LooksOpened looks={looks} group={group} onScale={setScale} />
    </CaseSheet>
  );
};

/** The whole car of this visit from below, fed from its looks. */
export const LooksCarPage = () => {
  const { family } = useCase();
  return family === null ? <NoFamilyPage /> : <WholeCar loaded={family} />;
};

/** One corner or axle of this visit's car, opened. */
export const LooksGroupPage = () => {
  const { family } = useCase();
  return family === null ? <NoFamilyPage /> : <Group loaded={family} />;
};
