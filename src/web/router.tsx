import { createRootRoute, createRoute, createRouter, notFound, Outlet } from "@tanstack/react-router";
import { groupOfTarget, groupTargetId, type PlaceGroup } from "#drawing";
import { BeginPage } from "./begin/begin-page.tsx";
import { FamiliesPage } from "./families/families-page.tsx";
import { FamilyPage } from "./families/family-page.tsx";
import { readFamilySearch } from "./families/family-search.ts";
import { NotShown, RefusedPage } from "./families/refused-page.tsx";
import { GeometryPage } from "./geometry/geometry-page.tsx";
import { readGeometrySearch } from "./geometry/geometry-search.ts";
import { formatSearch, parseSearch } from "./look/address.ts";
import { BrokenPage } from "./places/broken-page.tsx";
import { BenchPage, CounterPage, ReferencePage, TallyPage } from "./places/later-pages.tsx";
import { NowherePage } from "./places/nowhere-page.tsx";
import { TodayPage } from "./places/today-page.tsx";
import type { Answer } from "./server/ask-server.ts";
import { loadFamily } from "./server/families.ts";
import { listFamilies } from "./server/family-list.ts";
import { loadSilhouetteRanges } from "./server/silhouettes.ts";
import { CarPage } from "./underside/car-page.tsx";
import { GroupPage } from "./underside/group-page.tsx";
import { readUndersideSearch } from "./underside/underside-search.ts";

/** What a loader gives its page; anything but an answer is shown by RefusedPage. */
const shown = <T,>(answer: Answer<T>): T => {
  if (answer.kind === "answer") return answer.body;
  throw new NotShown(answer.kind === "refused" ? answer.findings : []);
};

const groupNamed = (name: string): PlaceGroup => {
  const group = groupOfTarget(`corner/${name}`) ?? groupOfTarget(`axle/${name}`);
  if (group === null) throw notFound();
  return group;
};

const root = createRootRoute({ component: Outlet, notFoundComponent: NowherePage });

const today = createRoute({ getParentRoute: () => root, path: "/", component: TodayPage });
const counter = createRoute({ getParentRoute: () => root, path: "/counter", component: CounterPage });
const bench = createRoute({ getParentRoute: () => root, path: "/bench", component: BenchPage });
const tally = createRoute({ getParentRoute: () => root, path: "/tally", component: TallyPage });
const reference = createRoute({ getParentRoute: () => root, path: "/reference", component: ReferencePage });

const families = createRoute({
  getParentRoute: () => root,
  path: "/families",
  loader: async () => shown(await listFamilies()),
  component: FamiliesPage,
  errorComponent: RefusedPage,
});
const begin = createRoute({
  getParentRoute: () => root,
  path: "/families/begin",
  loader: async () => shown(await loadSilhouetteRanges()),
  component: BeginPage,
  errorComponent: RefusedPage,
});

const family = createRoute({
  getParentRoute: () => root,
  path: "/families/$familyId",
  loader: async ({ params }) => shown(await loadFamily(params.familyId)),
  component: Outlet,
  errorComponent: RefusedPage,
});

const familySheet = createRoute({
  getParentRoute: () => family,
  path: "/",
  validateSearch: readFamilySearch,
  component: FamilyPage,
});
const geometry = createRoute({
  getParentRoute: () => family,
  path: "/geometry",
  validateSearch: readGeometrySearch,
  component: GeometryPage,
});
const underside = createRoute({
  getParentRoute: () => family,
  path: "/underside",
  validateSearch: readUndersideSearch,
  component: Outlet,
});
const car = createRoute({ getParentRoute: () => underside, path: "/", component: CarPage });
const group = createRoute({
  getParentRoute: () => underside,
  path: "/$group",
  params: {
    parse: ({ group: name }): { group: PlaceGroup } => ({ group: groupNamed(name) }),
    stringify: ({ group: open }) => ({ group: groupTargetId(open).replace(/^.*\//, "") }),
  },
  component: GroupPage,
});

export const router = createRouter({
  routeTree: root.addChildren([
    today,
    counter,
    bench,
    tally,
    reference,
    families,
    begin,
    family.addChildren([familySheet, geometry, underside.addChildren([car, group])]),
  ]),
  parseSearch,
  stringifySearch: formatSearch,
  defaultErrorComponent: BrokenPage,
});

declare module "@tanstack/react-router" {
  interface Register {
    router: typeof router;
  }
}
