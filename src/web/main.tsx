import "./refuse-eval.ts";
import { RouterProvider } from "@tanstack/react-router";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "./look/look.css";
import { preloadPagesInTime } from "./lazy-page.tsx";
import { focusHeadings } from "./look/focus-heading.ts";
import { startTheme } from "./look/theme.ts";
import { router } from "./router.tsx";

startTheme();
focusHeadings(router);

preloadPagesInTime();

const place = document.getElementById("sheet");
if (place === null) throw new Error("index.html has no element with the id sheet");

createRoot(place).render(
  <StrictMode>
    <RouterProvider router={router} />
  </StrictMode>,
);
