import {
  createRootRoute,
  createRoute,
  createRouter,
  notFound,
  Outlet,
  type RouteComponent,
  redirect,
} from "@tanstack/react-router";
import { groupOfTarget, groupTargetId, type PlaceGroup } from "#drawing";
import { readBeginSearch } from "./begin/begin-search.ts";
import { readBodiesSearch } from "./bodies/bodies-search.ts";
import { readCarSearch } from "./cases/car/car-search.ts";
import { CaseRefusedPage } from "./cases/case/case-refused-page.tsx";
import { stageNow } from "./cases/case/progress.ts";
import { readEnquirySearch } from "./cases/enquiry/enquiry-search.ts";
import { readFindingsSearch } from "./cases/findings/findings-search.ts";
import { readJobSearch } from "./cases/job-card/job-search.ts";
import { readLooksSearch } from "./cases/looks/looks-search.ts";
import { readPlanSearch } from "./cases/plan/plan-search.ts";
import { readEditSearch } from "./editor/edit-search.ts";
import { readFamiliesSearch } from "./families/families-search.ts";
import { readFamilySearch } from "./families/family-search.ts";
import { NotShown, RefusedPage } from "./families/refused-page.tsx";
import { readGeometrySearch } from "./geometry/geometry-search.ts";
import { readHoldSearch } from "./hold/hold-search.ts";
import { lazyPage } from "./lazy-page.tsx";
import { formatSearch, onlyWhatIsRead, parseSearch } from "./look/address.ts";
import { readMatchSearch } from "./match/match-search.ts";
import { PageWaiting } from "./page-waiting.tsx";
import { BrokenPage } from "./places/broken-page.tsx";
import { NowherePage } from "./places/nowhere-page.tsx";
import { readReferenceSearch } from "./reference/reference-search.ts";
import type { Answer } from "./server/ask-server.ts";
import { listFamilies, listShownFamilies } from "./server/family-list.ts";
import { readTravelSearch } from "./travel/travel-search.ts";
import { readUndersideSearch } from "./underside/underside-search.ts";
import { readWholeCarSearch } from "./whole-car/car-search.ts";

const BeginPage = lazyPage(async () => (await import("./begin/begin-page.tsx")).BeginPage);
const BodiesPage = lazyPage(async () => (await import("./bodies/bodies-page.tsx")).BodiesPage);
const BenchPage = lazyPage(async () => (await import("./places/later-pages.tsx")).BenchPage);
const CarPage = lazyPage(async () => (await import("./underside/car-page.tsx")).CarPage);
const CasePage = lazyPage(async () => (await import("./cases/case/case-page.tsx")).CasePage);
const CounterPage = lazyPage(async () => (await import("./places/later-pages.tsx")).CounterPage);
const EditPage = lazyPage(async () => (await import("./editor/edit-page.tsx")).EditPage);
const EnquiryPage = lazyPage(async () => (await import("./cases/enquiry/enquiry-page.tsx")).EnquiryPage);
const FamiliesPage = lazyPage(async () => (await import("./families/families-page.tsx")).FamiliesPage);
const FamilyPage = lazyPage(async () => (await import("./families/family-page.tsx")).FamilyPage);
const FindingsPage = lazyPage(async () => (await import("./cases/findings/findings-page.tsx")).FindingsPage);
const GeometryPage = lazyPage(async () => (await import("./geometry/geometry-page.tsx")).GeometryPage);
const GroupPage = lazyPage(async () => (await import("./underside/group-page.tsx")).GroupPage);
const HoldPage = lazyPage(async () => (await import("./hold/hold-page.tsx")).HoldPage);
const HandOverPage = lazyPage(async () => (await import("./cases/hand-over/hand-over-page.tsx")).HandOverPage);
const JobCardPage = lazyPage(async () => (await import("./cases/job-card/job-card-page.tsx")).JobCardPage);
const LooksCarPage = lazyPage(async () => (await import("./cases/looks/looks-pages.tsx")).LooksCarPage);
const LooksGroupPage = lazyPage(async () => (await import("./cases/looks/looks-pages.tsx")).LooksGroupPage);
const MatchPage = lazyPage(async () => (await import("./match/match-page.tsx")).MatchPage);
const OptionsPage = lazyPage(async () => (await import("./cases/case/later-stage-page.tsx")).OptionsPage);
const PlanPage = lazyPage(async () => (await import("./cases/plan/plan-page.tsx")).PlanPage);
const ReadingsPage = lazyPage(async () => (await import("./cases/readings/readings-page.tsx")).ReadingsPage);
const ReferencePage = lazyPage(async () => (await import("./reference/reference-page.tsx")).ReferencePage);
const TallyPage = lazyPage(async () => (await import("./places/later-pages.tsx")).TallyPage);
const TravelPage = lazyPage(async () => (await import("./travel/travel-page.tsx")).TravelPage);
const TodayPage = lazyPage(async () => (await import("./places/today-page.tsx")).TodayPage);
const UndersideHold = lazyPage(async () => (await import("./underside/underside-hold.tsx")).UndersideHold);
const WholeCarPage = lazyPage(async () => (await import("./whole-car/whole-car-page.tsx")).WholeCarPage);
const VisitCarPage = lazyPage(async () => (await import("./cases/car/car-page.tsx")).CarPage);

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

/** How the search part of each page's address is read; under each nothing else reaches its page. */
const searches = {
  begin: onlyWhatIsRead(readBeginSearch),
  bodies: onlyWhatIsRead(readBodiesSearch),
  car: onlyWhatIsRead(readCarSearch),
  edit: onlyWhatIsRead(readEditSearch),
  enquiry: onlyWhatIsRead(readEnquirySearch),
  families: onlyWhatIsRead(readFamiliesSearch),
  family: onlyWhatIsRead(readFamilySearch),
  findings: onlyWhatIsRead(readFindingsSearch),
  geometry: onlyWhatIsRead(readGeometrySearch),
  hold: onlyWhatIsRead(readHoldSearch),
  job: onlyWhatIsRead(readJobSearch),
  looks: onlyWhatIsRead(readLooksSearch),
  match: onlyWhatIsRead(readMatchSearch),
  plan: onlyWhatIsRead(readPlanSearch),
  reference: onlyWhatIsRead(readReferenceSearch),
  travel: onlyWhatIsRead(readTravelSearch),
  underside: onlyWhatIsRead(readUndersideSearch),
  wholeCar: onlyWhatIsRead(readWholeCarSearch),
};

const root = createRootRoute({ component: PageWaiting, notFoundComponent: NowherePage });

const today = createRoute({
  getParentRoute: () => root,
  path: "/",
  loader: async () => shown(await (await import("./cases/today/load-today.ts")).loadToday()),
  component: TodayPage,
  errorComponent: CaseRefusedPage,
});
const counter = createRoute({ getParentRoute: () => root, path: "/counter", component: CounterPage });
const bench = createRoute({ getParentRoute: () => root, path: "/bench", component: BenchPage });
const tally = createRoute({ getParentRoute: () => root, path: "/tally", component: TallyPage });
const reference = createRoute({
  getParentRoute: () => root,
  path: "/reference",
  validateSearch: searches.reference,
  component: ReferencePage,
});

const families = createRoute({
  getParentRoute: () => root,
  path: "/families",
  validateSearch: searches.families,
  loader: async () => shown(await listShownFamilies()),
  component: FamiliesPage,
  errorComponent: RefusedPage,
});
const layouts = createRoute({
  getParentRoute: () => root,
  path: "/layouts",
  validateSearch: searches.bodies,
  component: BodiesPage,
});
const begin = createRoute({
  getParentRoute: () => root,
  path: "/families/begin",
  validateSearch: searches.begin,
  loaderDeps: ({ search: { correct } }) => (correct === undefined ? {} : { correct }),
  loader: async ({ deps }) => shown(await (await import("./begin/load-begin.ts")).loadBegin(deps)),
  component: BeginPage,
  errorComponent: RefusedPage,
});

const edit = createRoute({
  getParentRoute: () => root,
  path: "/families/$familyId/edit",
  validateSearch: searches.edit,
  loader: async ({ params }) => shown(await (await import("./editor/load-edit.ts")).loadEditedFamily(params.familyId)),
  // Read once when the editor opens: choosing a row is no reason to ask the store again.
  shouldReload: false,
  gcTime: 0,
  component: EditPage,
  errorComponent: RefusedPage,
});

const family = createRoute({
  getParentRoute: () => root,
  path: "/families/$familyId",
  loader: async ({ params }) => shown(await (await import("./server/families.ts")).loadShownFamily(params.familyId)),
  component: Outlet,
  errorComponent: RefusedPage,
});

const familySheet = createRoute({
  getParentRoute: () => family,
  path: "/",
  validateSearch: searches.family,
  loader: async () => shown(await listFamilies()),
  component: FamilyPage,
});
/** A page of a car line that needs nothing but the car line. */
const familyPage = <Path extends string, Search>(
  path: Path,
  validateSearch: (search: Record<string, unknown>) => Search,
  component: RouteComponent,
) => createRoute({ getParentRoute: () => family, path, validateSearch, component });

const geometry = familyPage("/geometry", searches.geometry, GeometryPage);
const hold = familyPage("/hold", searches.hold, HoldPage);
const wholeCar = familyPage("/car", searches.wholeCar, WholeCarPage);
const match = createRoute({
  getParentRoute: () => family,
  path: "/match",
  validateSearch: searches.match,
  loader: async () => ({ lines: shown(await listShownFamilies()) }),
  component: MatchPage,
  errorComponent: RefusedPage,
});
const travel = createRoute({
  getParentRoute: () => family,
  path: "/travel",
  validateSearch: searches.travel,
  loaderDeps: ({ search: { beside } }) => (beside === undefined ? {} : { beside }),
  loader: async ({ deps: { beside } }) => {
    const listed = shown(await listShownFamilies());
    const other = beside === undefined ? null : await (await import("./server/families.ts")).loadShownFamily(beside);
    return {
      lines: [...listed.families, ...listed.examples],
      // One that is not there is said on the sheet, which stands all the same.
      beside: other?.kind === "answer" ? other.body.family : null,
    };
  },
  component: TravelPage,
  errorComponent: RefusedPage,
});
const underside = familyPage("/underside", searches.underside, UndersideHold);
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
  loader: async ({ params }) => shown(await (await import("./cases/case/load-case.ts")).loadCase(params.visit)),
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
const enquiry = createRoute({
  getParentRoute: () => visit,
  path: "/enquiry",
  validateSearch: searches.enquiry,
  component: EnquiryPage,
});
const visitCar = createRoute({
  getParentRoute: () => visit,
  path: "/car",
  validateSearch: searches.car,
  component: VisitCarPage,
});
const readings = createRoute({ getParentRoute: () => visit, path: "/readings", component: ReadingsPage });
const looks = createRoute({
  getParentRoute: () => visit,
  path: "/underside",
  validateSearch: searches.looks,
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
  validateSearch: searches.findings,
  component: FindingsPage,
});
const options = createRoute({ getParentRoute: () => visit, path: "/options", component: OptionsPage });
const plan = createRoute({
  getParentRoute: () => visit,
  path: "/plan",
  validateSearch: searches.plan,
  component: PlanPage,
});
const jobCard = createRoute({
  getParentRoute: () => visit,
  path: "/job-card",
  validateSearch: searches.job,
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
    layouts,
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
    family.addChildren([familySheet, geometry, hold, match, travel, wholeCar, underside.addChildren([car, group])]),
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
