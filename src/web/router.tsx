import { createRootRoute, createRoute, createRouter, notFound, Outlet, redirect } from "@tanstack/react-router";
import { groupOfTarget, groupTargetId, type PlaceGroup } from "#drawing";
import { BeginPage } from "./begin/begin-page.tsx";
import { readBeginSearch } from "./begin/begin-search.ts";
import { loadBegin } from "./begin/load-begin.ts";
import { CarPage as VisitCarPage } from "./cases/car/car-page.tsx";
import { readCarSearch } from "./cases/car/car-search.ts";
import { CasePage } from "./cases/case/case-page.tsx";
import { CaseRefusedPage } from "./cases/case/case-refused-page.tsx";
import { OptionsPage } from "./cases/case/later-stage-page.tsx";
import { loadCase } from "./cases/case/load-case.ts";
import { stageNow } from "./cases/case/progress.ts";
import { EnquiryPage } from "./cases/enquiry/enquiry-page.tsx";
import { FindingsPage } from "./cases/findings/findings-page.tsx";
import { readFindingsSearch } from "./cases/findings/findings-search.ts";
import { HandOverPage } from "./cases/hand-over/hand-over-page.tsx";
import { JobCardPage } from "./cases/job-card/job-card-page.tsx";
import { readJobSearch } from "./cases/job-card/job-search.ts";
import { LooksCarPage, LooksGroupPage } from "./cases/looks/looks-pages.tsx";
import { readLooksSearch } from "./cases/looks/looks-search.ts";
import { PlanPage } from "./cases/plan/plan-page.tsx";
import { readPlanSearch } from "./cases/plan/plan-search.ts";
import { ReadingsPage } from "./cases/readings/readings-page.tsx";
import { loadToday } from "./cases/today/load-today.ts";
import { EditPage } from "./editor/edit-page.tsx";
import { readEditSearch } from "./editor/edit-search.ts";
import { loadEditedFamily } from "./editor/load-edit.ts";
import { FamiliesPage } from "./families/families-page.tsx";
import { readFamiliesSearch } from "./families/families-search.ts";
import { FamilyPage } from "./families/family-page.tsx";
import { readFamilySearch } from "./families/family-search.ts";
import { NotShown, RefusedPage } from "./families/refused-page.tsx";
import { GeometryPage } from "./geometry/geometry-page.tsx";
import { readGeometrySearch } from "./geometry/geometry-search.ts";
import { formatSearch, parseSearch } from "./look/address.ts";
import { BrokenPage } from "./places/broken-page.tsx";
import { BenchPage, CounterPage, TallyPage } from "./places/later-pages.tsx";
import { NowherePage } from "./places/nowhere-page.tsx";
import { TodayPage } from "./places/today-page.tsx";
import { ReferencePage } from "./reference/reference-page.tsx";
import { readReferenceSearch } from "./reference/reference-search.ts";
import type { Answer } from "./server/ask-server.ts";
import { loadShownFamily } from "./server/families.ts";
import { listFamilies, listShownFamilies } from "./server/family-list.ts";
import { CarPage } from "./underside/car-page.tsx";
import { GroupPage } from "./underside/group-page.tsx";
import { UndersideHold } from "./underside/underside-hold.tsx";
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

/** A corner or axle in an address. */
const groupParams = {
  parse: ({ group: name }: { readonly group: string }): { group: PlaceGroup } => ({ group: groupNamed(name) }),
  stringify: ({ group: open }: { readonly group: PlaceGroup }) => ({ group: groupTargetId(open).replace(/^.*\//, "") }),
};

const root = createRootRoute({ component: Outlet, notFoundComponent: NowherePage });

const today = createRoute({
  getParentRoute: () => root,
  path: "/",
  loader: async () => shown(await loadToday()),
  component: TodayPage,
  errorComponent: CaseRefusedPage,
});
const counter = createRoute({ getParentRoute: () => root, path: "/counter", component: CounterPage });
const bench = createRoute({ getParentRoute: () => root, path: "/bench", component: BenchPage });
const tally = createRoute({ getParentRoute: () => root, path: "/tally", component: TallyPage });
const reference = createRoute({
  getParentRoute: () => root,
  path: "/reference",
  validateSearch: readReferenceSearch,
  component: ReferencePage,
});

const families = createRoute({
  getParentRoute: () => root,
  path: "/families",
  validateSearch: readFamiliesSearch,
  loader: async () => shown(await listShownFamilies()),
  component: FamiliesPage,
  errorComponent: RefusedPage,
});
const begin = createRoute({
  getParentRoute: () => root,
  path: "/families/begin",
  validateSearch: readBeginSearch,
  loaderDeps: ({ search: { correct } }) => (correct === undefined ? {} : { correct }),
  loader: async ({ deps }) => shown(await loadBegin(deps)),
  component: BeginPage,
  errorComponent: RefusedPage,
});

const edit = createRoute({
  getParentRoute: () => root,
  path: "/families/$familyId/edit",
  validateSearch: readEditSearch,
  loader: async ({ params }) => shown(await loadEditedFamily(params.familyId)),
  // Read once when the editor opens: choosing a row is no reason to ask the store again.
  shouldReload: false,
  gcTime: 0,
  component: EditPage,
  errorComponent: RefusedPage,
});

const family = createRoute({
  getParentRoute: () => root,
  path: "/families/$familyId",
  loader: async ({ params }) => shown(await loadShownFamily(params.familyId)),
  component: Outlet,
  errorComponent: RefusedPage,
});

const familySheet = createRoute({
  getParentRoute: () => family,
  path: "/",
  validateSearch: readFamilySearch,
  loader: async () => shown(await listFamilies()),
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
  component: UndersideHold,
});
const car = createRoute({ getParentRoute: () => underside, path: "/", component: CarPage });
const group = createRoute({
  getParentRoute: () => underside,
  path: "/$group",
  params: groupParams,
  component: GroupPage,
});

const visit = createRoute({
  getParentRoute: () => root,
  path: "/cases/$visit",
  loader: async ({ params }) => shown(await loadCase(params.visit)),
  component: CasePage,
  errorComponent: CaseRefusedPage,
});
const visitNow = createRoute({
  getParentRoute: () => visit,
  path: "/",
  loader: async ({ params, parentMatchPromise }) => {
    const { loaderData } = await parentMatchPromise;
    const own = loaderData?.visits.find(({ visit: { id } }) => id === params.visit);
    throw redirect({ to: `/cases/$visit/${stageNow(own?.visit.document.done ?? [])}`, params });
  },
});
const enquiry = createRoute({ getParentRoute: () => visit, path: "/enquiry", component: EnquiryPage });
const visitCar = createRoute({
  getParentRoute: () => visit,
  path: "/car",
  validateSearch: readCarSearch,
  component: VisitCarPage,
});
const readings = createRoute({ getParentRoute: () => visit, path: "/readings", component: ReadingsPage });
const looks = createRoute({
  getParentRoute: () => visit,
  path: "/underside",
  validateSearch: readLooksSearch,
  component: Outlet,
});
const looksCar = createRoute({ getParentRoute: () => looks, path: "/", component: LooksCarPage });
const looksGroup = createRoute({
  getParentRoute: () => looks,
  path: "/$group",
  params: groupParams,
  component: LooksGroupPage,
});
const findings = createRoute({
  getParentRoute: () => visit,
  path: "/findings",
  validateSearch: readFindingsSearch,
  component: FindingsPage,
});
const options = createRoute({ getParentRoute: () => visit, path: "/options", component: OptionsPage });
const plan = createRoute({
  getParentRoute: () => visit,
  path: "/plan",
  validateSearch: readPlanSearch,
  component: PlanPage,
});
const jobCard = createRoute({
  getParentRoute: () => visit,
  path: "/job-card",
  validateSearch: readJobSearch,
  component: JobCardPage,
});
const handOver = createRoute({ getParentRoute: () => visit, path: "/hand-over", component: HandOverPage });

export const router = createRouter({
  routeTree: root.addChildren([
    today,
    counter,
    bench,
    tally,
    reference,
    families,
    begin,
    edit,
    visit.addChildren([
      visitNow,
      enquiry,
      visitCar,
      readings,
      looks.addChildren([looksCar, looksGroup]),
      findings,
      options,
      plan,
      jobCard,
      handOver,
    ]),
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
