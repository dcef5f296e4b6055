import { afterEach } from "vitest";
import { takePagesBack } from "./fresh-page.ts";

afterEach(takePagesBack);
