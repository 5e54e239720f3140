// The list of journeys. Each file under journeys/ adds the one it is named after.

/** @type {{title: string, steps: Function, faults: object | null, complaints: RegExp[]}[]} */
export const journeys = [];

/**
 * @param {string} title what the keeper did, as a sentence
 * @param {object} circumstances
 *   `faults`: what stands before the page, see faults.mjs (the page then has no service worker);
 *   `complaints`: what the page may write on the browser's console because the journey provokes it
 * @param {(keeper: import("./keeper.mjs").Keeper, t: import("node:test").TestContext) => Promise<void>} steps
 */
export function journey(title, circumstances, steps) {
  const { faults = null, complaints = [] } = circumstances;
  journeys.push({ title, steps, faults, complaints });
}
