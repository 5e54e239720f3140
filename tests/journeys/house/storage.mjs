// What can happen to the browser's storage, done from outside the page.
import { crc32 } from "node:zlib";

/** Fills the storage of the origin to the last character with records of another page. */
export const fill = (keeper) =>
  keeper.driver.run(() => {
    let count = 0;
    for (let size = 1 << 20; size >= 1; size >>= 1) {
      for (;;) {
        try {
          localStorage.setItem(`other-page-${count}`, "x".repeat(size));
          count += 1;
        } catch {
          break;
        }
      }
    }
    return count;
  });

/** Takes the other page's records away again. */
export const free = (keeper) =>
  keeper.driver.run(() => {
    for (const key of Object.keys(localStorage)) if (key.startsWith("other-page-")) localStorage.removeItem(key);
  });

/** Changes one character in the middle of what is kept under `key`, and returns the damaged text. */
export const damage = (keeper, key) =>
  keeper.driver.run((key) => {
    const text = localStorage.getItem(key);
    const at = text.length >> 1;
    const damaged = `${text.slice(0, at)}\u0007${text.slice(at + 1)}`;
    localStorage.setItem(key, damaged);
    return damaged;
  }, key);

/**
 * Lays a second part beside the page under `key`, or what `at` names, sound, with `other` in the place of `words`, and
 * returns its text.
 */
export async function sayOtherwise(keeper, key, words, other, at = `${key}:2`) {
  const page = JSON.parse(await keeper.driver.run((key) => localStorage.getItem(key), key));
  const payload = JSON.stringify(page.d).replace(words, other);
  const sum = crc32(`${page.v}:${page.g}:${payload}`).toString(16).padStart(8, "0");
  const text = `{"v":${page.v},"g":${page.g},"c":"${sum}","d":${payload}}`;
  await keeper.driver.run((key, text) => localStorage.setItem(key, text), at, text);
  return text;
}

/** Takes away the pages of the book, as a browser short of room might; the rest stays. Returns how many there were. */
export const clearPages = (keeper) =>
  keeper.driver.run(() => {
    const pages = Object.keys(localStorage).filter((key) => key.startsWith("beetle-almanac:page:"));
    pages.forEach((key) => localStorage.removeItem(key));
    return pages.length;
  });

/** Takes away the second copy of the book. */
export const clearSecond = (keeper) =>
  keeper.driver.wait(
    () =>
      new Promise((done, fail) => {
        const request = indexedDB.deleteDatabase("beetle-almanac");
        request.onsuccess = () => done();
        request.onerror = () => fail(request.error);
      }),
  );

/** Every text of the second copy, one after the other. */
export const secondTexts = (keeper) =>
  keeper.driver.wait(
    () =>
      new Promise((done, fail) => {
        const opening = indexedDB.open("beetle-almanac");
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const texts = opening.result.transaction("texts").objectStore("texts").getAll();
          texts.onerror = () => fail(texts.error);
          texts.onsuccess = () => {
            opening.result.close();
            done(texts.result.join("\n"));
          };
        };
      }),
  );
