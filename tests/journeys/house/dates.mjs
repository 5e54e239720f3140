// Dates as the page writes them: the words are English, the order is the phone's, and where there is little room the
// month is short.

const MONTHS = "January February March April May June July August September October November December".split(" ");
const WEEKDAYS = "Sun Mon Tue Wed Thu Fri Sat".split(" ");
const MONTH = `(${MONTHS.map((month) => `${month.slice(0, 3)}(?:${month.slice(3)})?`).join("|")})`;

const monthOf = (word) => MONTHS.findIndex((month) => month.startsWith(word));

/** Matches this day with its weekday: "Tue 14 July 2026", "Tue, July 14, 2026", "Tue 14 Jul". */
export function written(iso) {
  const day = new Date(`${iso}T12:00:00Z`);
  const month = MONTHS[day.getUTCMonth()];
  const word = `${month.slice(0, 3)}(?:${month.slice(3)})?`;
  const number = day.getUTCDate();
  return new RegExp(`\\b${WEEKDAYS[day.getUTCDay()]},? (?:${number} ${word}|${word} ${number})\\b(?:,? ${day.getUTCFullYear()}|(?!,? \\d{4}))`);
}

/** Every date in a text: what is written, its weekday if it has one, and the weekday it ought to have. */
export function dates(text, usualYear) {
  const date = new RegExp(`(?:\\b(${WEEKDAYS.join("|")})[a-z]*,? )?(?:\\b(\\d{1,2}) ${MONTH}\\b|\\b${MONTH} (\\d{1,2})\\b)(?:,? (\\d{4}))?`, "g");
  return [...text.matchAll(date)].map(([found, weekday, day, month, otherMonth, otherDay, year]) => {
    const at = Date.UTC(year ?? usualYear, monthOf(month ?? otherMonth), day ?? otherDay);
    return { found, weekday, right: WEEKDAYS[new Date(at).getUTCDay()] };
  });
}

/** The phone's clock is set on by so many days while the page is open, until it is loaded again; the page is looked at. */
export const setClock = (keeper, days) =>
  keeper.driver.run((ahead) => {
    // Firefox runs the driver's scripts beside the page, with a Date of their own.
    const Before = window.Date;
    const now = () => Before.now() + ahead;
    window.Date = new Proxy(Before, {
      construct: (Real, args) => new Real(...(args.length ? args : [now()])),
      get: (Real, name) => (name === "now" ? now : Real[name]),
    });
    document.dispatchEvent(new Event("visibilitychange"));
  }, days * 86_400_000);
