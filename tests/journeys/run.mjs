// Walks the journeys: `npm test`, `npm test -- --engine=chromium`, `npm test -- --only=undo`.
import process from "node:process";
import { run } from "node:test";
import { spec } from "node:test/reporters";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { ENGINES } from "./house/engines.mjs";
// Ends here when there is no page to walk, rather than once in each engine.
import "./house/settings.mjs";

const { values } = parseArgs({
  options: { engine: { type: "string", multiple: true, default: ENGINES }, only: { type: "string", default: "" } },
});
for (const name of values.engine.filter((name) => !ENGINES.includes(name))) {
  console.error(`no engine "${name}"; there are ${ENGINES.join(", ")}`);
  process.exit(2);
}
process.env.JOURNEY_ONLY = values.only;

const started = Date.now();
const files = values.engine.map((name) => fileURLToPath(new URL(`engines/${name}.mjs`, import.meta.url)));
// Two at a time: a browser waits more than it works, and a third would make every wait longer.
const results = run({ files, concurrency: 2 });

const tally = Object.fromEntries(values.engine.map((name) => [name, { passed: 0, failed: 0, skipped: 0, ms: 0 }]));
let engine;
let broken = 0;
// Results come file by file, each begun by the name of its engine.
results.on("test:start", ({ name, nesting }) => nesting === 0 && (engine = name));
const count = (passed) => ({ name, nesting, skip, details }) => {
  if (nesting === 1) tally[engine][skip !== undefined ? "skipped" : passed ? "passed" : "failed"] += 1;
  else if (nesting === 0 && name in tally) tally[name].ms = details.duration_ms;
  // Outside every journey: an error while loading, a browser that did not end.
  if (nesting === 0 && !passed && details.error?.failureType !== "subtestsFailed") broken += 1;
};
results.on("test:pass", count(true));
results.on("test:fail", count(false));
results.compose(new spec()).pipe(process.stdout);

results.on("end", () => {
  const rows = Object.entries(tally);
  const sum = (what) => rows.reduce((total, [, row]) => total + row[what], 0);
  const silent = rows.filter(([, { passed, failed }]) => passed + failed === 0).length;
  const failed = sum("failed") + broken + silent;
  process.on("exit", () => {
    for (const [engine, row] of rows) {
      console.log(`${engine}: ${row.passed} passed, ${row.failed} failed, ${row.skipped} skipped, ${(row.ms / 1000).toFixed(0)} s`);
    }
    console.log(`journeys took ${((Date.now() - started) / 1000).toFixed(0)} s`);
    console.log(`${sum("passed")} passed, ${failed} failed`);
    process.exitCode = failed > 0 ? 1 : 0;
  });
});
