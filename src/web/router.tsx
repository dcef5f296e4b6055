import { createRootRoute, createRoute, createRouter, Outlet } from "@tanstack/react-router";
import { BenchPage, CounterPage, ReferencePage, TallyPage } from "./places/later-pages.tsx";
import { TodayPage } from "./places/today-page.tsx";

const root = createRootRoute({
  component: Outlet,
});

const today = createRoute({ getParentRoute: () => root, path: "/", component: TodayPage });
const counter = createRoute({ getParentRoute: () => root, path: "/counter", component: CounterPage });
const bench = createRoute({ getParentRoute: () => root, path: "/bench", component: BenchPage });
const tally = createRoute({ getParentRoute: () => root, path: "/tally", component: TallyPage });
const reference = createRoute({ getParentRoute: () => root, path: "/reference", component: ReferencePage });

export const router = createRouter({
  routeTree: root.addChildren([today, counter, bench, tally, reference]),
});

declare module "@tanstack/react-router" {
  interface Register {
    router: typeof router;
  }
}
