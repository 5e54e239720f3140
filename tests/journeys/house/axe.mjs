// axe-core, sent into the page as a script.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** What WCAG 2.2 AA finds wrong on the screen, one line a finding; empty when nothing is. */
export async function findings(keeper) {
  await keeper.driver.call("POST", "/execute/sync", { script: `if (!window.axe) { ${source} }`, args: [] });
  const result = await keeper.driver.wait(async (tags) => {
    const { violations, passes } = await window.axe.run(document, { runOnly: { type: "tag", values: tags }, resultTypes: ["violations"] });
    return {
      passed: passes.length,
      lines: violations.flatMap(({ id, help, nodes }) => nodes.map((node) => `${id} (${help}): ${node.html.slice(0, 160)} – ${node.failureSummary.replace(/\s+/g, " ")}`)),
    };
  }, RULES);
  // An empty result of a run that looked at nothing would say nothing.
  if (result.passed < 5) throw new Error(`axe passed ${result.passed} rules only: it did not see the page`);
  return result.lines;
}
