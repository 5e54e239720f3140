// What may be set from outside, read in one place.
import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";

const here = fileURLToPath(new URL("..", import.meta.url));

/** The built page. */
export const pageRoot = resolve(here, process.env.PAGE_ROOT ?? "../../dist");

/** Pictures of failed journeys. */
export const failures = resolve(here, "../../target/journeys");

/** What the names of the files to walk look like; empty walks all. */
export const only = process.env.JOURNEY_ONLY ?? "";

// The clock and the browsers are in one place, with changes to summer time.
process.env.TZ = "America/New_York";

if (!existsSync(join(pageRoot, "index.html"))) {
  console.error(`journeys: no page in ${pageRoot}: run "make build" first, or set PAGE_ROOT to the built folder`);
  process.exit(2);
}
