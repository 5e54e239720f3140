// Dates as the page writes them: the words are English, the order is the phone's.

const MONTHS = "January February March April May June July August September October November December".split(" ");
const WEEKDAYS = "Sun Mon Tue Wed Thu Fri Sat".split(" ");
const MONTH = `(${MONTHS.join("|")})`;

/** Matches this day with its weekday, in either order: "Tue 14 July 2026", "Tue, July 14, 2026". */
export function written(iso) {
  const day = new Date(`${iso}T12:00:00Z`);
  const [number, month] = [day.getUTCDate(), MONTHS[day.getUTCMonth()]];
  return new RegExp(`${WEEKDAYS[day.getUTCDay()]},? (${number} ${month}|${month} ${number}),? ${day.getUTCFullYear()}`);
}

/** Every date in a text: what is written, its weekday if it has one, and the weekday it ought to have. */
export function dates(text, usualYear) {
  const date = new RegExp(`(?:\\b(${WEEKDAYS.join("|")})[a-z]*,? )?(?:\\b(\\d{1,2}) ${MONTH}\\b|\\b${MONTH} (\\d{1,2})\\b)(?:,? (\\d{4}))?`, "g");
  return [...text.matchAll(date)].map(([found, weekday, day, month, otherMonth, otherDay, year]) => {
    const at = Date.UTC(year ?? usualYear, MONTHS.indexOf(month ?? otherMonth), day ?? otherDay);
    return { found, weekday, right: WEEKDAYS[new Date(at).getUTCDay()] };
  });
}
