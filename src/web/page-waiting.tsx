import { Outlet, useRouterState } from "@tanstack/react-router";
import { WaitingLine } from "./shell/waiting-line.tsx";

const COMING = { doing: "Fetching the sheet" };

/** Every page, with the line that shows while the next one is being fetched. */
export const PageWaiting = () => {
  const coming = useRouterState({ select: ({ isLoading }) => isLoading });
  return (
    <>
      <WaitingLine waiting={coming ? COMING : null} />
      <Outlet />
    </>
  );
};
