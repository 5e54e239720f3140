//! The papers that programs outside this project read: made of the demonstration, with words in it that a careless
//! writer of tables or calendars would break.

use super::record_of_each::filled;
use super::support::{SUMMER, Unicode, day, pen};
use beetle_almanac::almanac::day::{Day, Stamp};
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::app::ledger::papers::events::events;
use beetle_almanac::app::ledger::words;
use beetle_almanac::book::Book;
use beetle_almanac::book::demo::demo;
use beetle_almanac::book::entry::{Check, Did, Ending, Entry, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::log::Log;
use beetle_almanac::book::record::{About, Answer, Blank, ClockTime, Record};
use beetle_almanac::book::write::Refusal;
use beetle_almanac::papers::backup;
use beetle_almanac::papers::calendar::{Calendar, give_out};
use beetle_almanac::papers::records::Records;
use beetle_almanac::papers::table::Style;

/// The day of the first calendar and of the tables; the second calendar is of the day after.
pub(crate) const TODAY: &str = "2026-07-14";
/// A hive's tag with every mark that means something in one of the two formats.
pub(crate) const TAG: &str = "3, \"blue\"; a\\b";
/// A note that looks like a formula and goes over two lines.
pub(crate) const FORMULA: &str = "=SUM(A1:A9)\nsecond, \"quoted\" line";
/// A note of several bytes a character, longer than a line of a calendar.
pub(crate) const LONG: &str =
    "Große Käfer über Öl: 小蜂箱甲虫在巢脾角落里，数了三遍才数清，明天再来看一次。🐝🪲🐝🪲🐝🪲🐝🪲🐝🪲🐝🪲";

/// A book as it goes on.
pub(crate) struct Tale {
    pub(crate) book: Book,
    pub(crate) today: Day,
}

impl Tale {
    /// The demonstration and a morning's work.
    pub(crate) fn first() -> Tale {
        let today = day(TODAY);
        let mut book = Book::default();
        book.add(demo(today, "Europe/Berlin", 120, &Unicode).unwrap());
        let mut tale = Tale { book, today };
        let changed = |hive| What::HiveChanged { hive, tag: Some(TAG.to_owned()), size: None };
        tale.about("3", &changed);
        for number in 12..=18 {
            let tag = format!("小蜂箱甲虫 Ä{number}🐝");
            let changed = |hive| What::HiveChanged { hive, tag: Some(tag.clone()), size: None };
            tale.about(&number.to_string(), &changed);
        }
        tale.about("19", &|hive| What::Note { hive: Some(hive), text: LONG.to_owned() });
        tale.about("7", &|hive| What::HiveEnded { hive, how: Ending::Dead });
        let other = tale.book.standing().yards.keys().nth(1).unwrap().clone();
        tale.about("6", &|hive| What::HiveMoved {
            hive,
            to: other.clone(),
            permit: Some("-7/2026".to_owned()),
        });
        let open = CountRange::new(50, None).unwrap();
        tale.check("1", Did::ToppedUp, None, Some(open), Some(FORMULA));
        tale.check("2", Did::ToppedUp, Some(40), CountRange::new(5, Some(19)).ok(), None);
        tale.check("4", Did::Spilled, None, None, None);
        tale.check("10", Did::AsFound, Some(41), Some(CountRange::exact(0)), Some("@home"));
        let struck = tale.check("8", Did::Replaced, None, None, Some("the wrong hive"));
        let strike = tale.book.strike(&pen("bb", today), today, &[struck[0].id.clone()], &Unicode).unwrap();
        tale.book.add(strike);
        tale.records();
        tale.aims();
        tale.patty("5");
        tale.harvest("2026-07-13T15:00", 4);
        tale.harvest("2026-07-14T16:30", 6);
        tale
    }

    /// One record of each kind, and a look with a zero, a field left empty and one that nobody looked at.
    fn records(&mut self) {
        let (one, other) = (self.hive("1"), self.hive("2"));
        let yard = self.book.standing().hives[&one].yard.clone();
        for blank in Blank::ALL {
            let yard = (blank.about() != About::Keeper).then_some(&yard);
            let record = filled(blank, &one, &other);
            self.keep(|book, today| book.record(&pen("bb", today), today, today, yard, record));
        }
        let mut look = Record::empty(Blank::Look, vec![other]);
        look.answers[0] = Some(Answer::Word(0));
        look.answers[4] = Some(Answer::Count(CountRange::exact(0)));
        self.keep(|book, today| book.record(&pen("bb", today), today, today, Some(&yard), look));
    }

    /// The keeper wants to spin within 20 hours, within 44 at the most.
    fn aims(&mut self) {
        let mut aims = Record::empty(Blank::Aims, Vec::new());
        put(&mut aims, "goal_hours", Answer::Number(Decimal::whole(20), 0));
        put(&mut aims, "limit_hours", Answer::Number(Decimal::whole(44), 0));
        self.keep(|book, today| book.record(&pen("bb", today), today, today, None, aims));
    }

    /// A patty was put in.
    fn patty(&mut self, tag: &str) {
        let hive = self.hive(tag);
        let yard = self.book.standing().hives[&hive].yard.clone();
        let mut patty = Record::empty(Blank::Patty, vec![hive]);
        patty.answers[0] = Some(Answer::Word(0));
        self.keep(|book, today| book.record(&pen("bb", today), today, today, Some(&yard), patty));
    }

    /// Supers were pulled and are not spun.
    fn harvest(&mut self, bees_off: &str, supers: u32) {
        let yard = self.book.standing().hives[&self.hive("1")].yard.clone();
        let mut lot = Record::empty(Blank::Harvest, Vec::new());
        put(&mut lot, "supers", Answer::Number(Decimal::whole(supers), 0));
        put(&mut lot, "bees_off", Answer::Time(ClockTime::parse(bees_off).unwrap()));
        put(&mut lot, "room", Answer::Number(Decimal::whole(28), 0));
        self.keep(|book, today| book.record(&pen("bb", today), today, today, Some(&yard), lot));
    }

    /// The supers that were pulled first are spun.
    fn spun(&mut self) {
        let lots = self.book.standing().records_of(Blank::Harvest);
        let first = lots.iter().find(|(_, now)| now.record.time("extraction_ended").is_none()).unwrap();
        let (line, day, mut lot) = (first.0.clone(), first.1.day, first.1.record.clone());
        put(&mut lot, "extraction_ended", Answer::Time(ClockTime::parse("2026-07-15T10:00").unwrap()));
        let lot = What::Record(lot);
        self.keep(|book, today| book.correct(&pen("bb", today), day, today, &line, lot, &Unicode));
    }

    /// The day after: the spill was looked at again, a hive that was due is done, and the first supers are spun.
    pub(crate) fn second() -> Tale {
        let mut tale = Tale::first();
        tale.today = tale.today.plus(1);
        tale.check("4", Did::ToppedUp, None, None, None);
        tale.check("11", Did::ToppedUp, None, None, None);
        tale.spun();
        tale
    }

    pub(crate) fn hive(&self, tag: &str) -> ThingId {
        let hives = &self.book.standing().hives;
        hives.iter().find(|(_, hive)| hive.tag == tag).map(|(id, _)| id.clone()).unwrap()
    }

    fn about(&mut self, tag: &str, what: &dyn Fn(ThingId) -> What) {
        let hive = self.hive(tag);
        let yard = self.book.standing().hives[&hive].yard.clone();
        let what = what(hive);
        self.keep(|book, today| book.about_yard(&pen("bb", today), today, today, &yard, what));
    }

    fn check(
        &mut self,
        tag: &str,
        did: Did,
        before: Option<u32>,
        count: Option<CountRange>,
        note: Option<&str>,
    ) -> Vec<Entry> {
        let before = before.map(|percent| Share::from_percent(Decimal::whole(percent)).unwrap());
        let after = (did != Did::AsFound).then_some(Share::HALF);
        let note = note.map(str::to_owned);
        let work = Check { hive: self.hive(tag), traps: None, did, before, after, count, note };
        self.keep(|book, today| book.check(&pen("bb", today), today, today, work))
    }

    fn keep(&mut self, write: impl FnOnce(&Book, Day) -> Result<Vec<Entry>, Refusal>) -> Vec<Entry> {
        let entries = write(&self.book, self.today).unwrap();
        self.book.add(entries.clone());
        entries
    }

    pub(crate) fn table(&self, records: Records, style: Style) -> String {
        records.table(&self.book, style, &|entry| words::entry(&self.book, entry))
    }
}

fn put(record: &mut Record, name: &str, answer: Answer) {
    let at = record.blank.fields().iter().position(|field| field.name == name).unwrap();
    record.answers[at] = Some(answer);
}

/// The calendar file of the first day, and that of the second to the same keeper.
pub(crate) fn calendars() -> [Calendar; 2] {
    let (first, second) = (Tale::first(), Tale::second());
    // Half past midnight in Berlin: in UTC it is still the day before.
    let made = |tale: &Tale| Stamp::new(tale.today, 30 * 60 + 5, 120).unwrap();
    let one = events(&first.book, first.today, &SUMMER);
    let one = give_out(&one, &[], first.today, made(&first), "No longer due").unwrap();
    let two = events(&second.book, second.today, &SUMMER);
    let two = give_out(&two, &one.given, second.today, made(&second), "No longer due").unwrap();
    [one, two]
}

/// Every file with its name, as it lies in `tests/figures/papers`.
pub(crate) fn files() -> Vec<(String, String)> {
    let [one, two] = calendars();
    let mut files = vec![("calendar-1.ics".to_owned(), one.text), ("calendar-2.ics".to_owned(), two.text)];
    let tale = Tale::first();
    for records in Records::all(&tale.book) {
        files.push((format!("{}.csv", records.name()), tale.table(records, Style::default())));
    }
    let careful = Style { mark: true, guard: true };
    files.push(("trap-work-guarded.csv".to_owned(), tale.table(Records::Checks, careful)));
    files.push(("backup.json".to_owned(), backup(&tale)));
    files
}

/// The demonstration as a keeper's own book: a backup leaves out what the demonstration wrote.
fn backup(tale: &Tale) -> String {
    let own = |entry: &Entry| {
        let text = serde_json::to_string(entry).unwrap().replace("\"demo-", "\"invented-");
        serde_json::from_str::<Entry>(&text).unwrap()
    };
    let log: Log = tale.book.log().entries().map(own).collect();
    backup::write(&log, Stamp::new(tale.today, 72_915, 120).unwrap(), Some("Truck phone"))
}
