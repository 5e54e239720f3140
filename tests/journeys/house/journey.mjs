// The list of journeys. Each file under journeys/ adds the one it is named after.

import { LETTERS } from "./engines.mjs";

/** @type {{title: string, steps: Function, faults: object | null, complaints: RegExp[], letters: number}[]} */
export const journeys = [];

/**
 * @param {string} title what the keeper did, as a sentence
 * @param {object} circumstances
 *   `faults`: what stands before the page, see faults.mjs (the page then has no service worker);
 *   `complaints`: what the page may write on the browser's console because the journey provokes it;
 *   `letters`: the size of letters the phone is set to, where it is not the usual one
 * @param {(keeper: import("./keeper.mjs").Keeper, t: import("node:test").TestContext) => Promise<void>} steps
 */
export function journey(title, circumstances, steps) {
  const { faults = null, complaints = [], letters = LETTERS } = circumstances;
  journeys.push({ title, steps, faults, complaints, letters });
}
