//! The page that takes: codes by the camera or as pasted text, or a file.

use super::give::section;
use crate::app::edge::camera::{self, Camera, NoCamera};
use crate::app::edge::squeeze::{self, Unpacked};
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::graph::{RwSignal, StoredValue, after};
use crate::app::ledger::restore::Looked;
use crate::app::parts::key::link;
use crate::app::parts::notice::Notice;
use crate::app::place::{Place, Section};
use crate::app::records::Records;
use crate::app::round::form::{big, keys};
use crate::app::wording::en;
use crate::app::wording::en_hand_over::{TAKE_IN, take as w};
use crate::papers::codes::{self, Added, MOST_UNPACKED, Packed, Run};

/// Between two looks through the camera, in milliseconds: a code stands for longer, and the phone stays cool.
const LOOK: u64 = 150;

/// What is being read.
#[derive(Clone, Copy)]
struct Reading {
    run: RwSignal<Run>,
    /// What was wrong with the last ones.
    said: RwSignal<String>,
    looked: Looked,
    pasted: RwSignal<String>,
    /// The camera is on, or on its way.
    on: RwSignal<bool>,
    camera: StoredValue<Option<Camera>>,
    /// Counts how often it was opened and stopped: an answer to an earlier opening, and an earlier loop, see another.
    turn: StoredValue<u32>,
}

/// The page.
pub(in crate::app::ledger) fn view(records: Records) -> Bit {
    let reading = Reading {
        run: RwSignal::new(Run::default()),
        said: RwSignal::new(String::new()),
        looked: Looked::new(),
        pasted: RwSignal::new(String::new()),
        on: RwSignal::new(false),
        camera: StoredValue::new(None),
        turn: StoredValue::new(0),
    };
    camera::when_hidden(move || reading.stop());
    Bit::Many(vec![
        el("p").class("back").kid(link(en::section(Section::Book), &Place::Book)).into(),
        heading(TAKE_IN).into(),
        el("p").text(w::ABOUT).into(),
        section(w::CODES).kid(reading.camera()).kid(reading.paste()).kid(reading.progress()).into(),
        section(w::FILE).kid(reading.looked.field()).into(),
        reading.looked.view(records).into(),
    ])
}

impl Reading {
    fn camera(self) -> El {
        if !camera::can() {
            return el("p").test_id("camera-not").text(w::NO_READER);
        }
        let hidden = move |on: bool| move || (self.on.get() == on).then(String::new);
        let video = el("video")
            .attr("playsinline", "")
            .attr("muted", "")
            .attr("aria-label", w::PICTURE)
            .class("camera")
            .live_attr("hidden", hidden(false));
        let seen = video.element().clone();
        let open = move || {
            self.said.set(String::new());
            let Some(mine) = self.turned() else { return };
            self.on.set(true);
            camera::open(seen.clone(), move |camera| self.opened(mine, camera));
        };
        let open = big(w::CAMERA, "camera-open", open).live_attr("hidden", hidden(true));
        let stop = big(w::STOP, "camera-stop", move || self.stop()).live_attr("hidden", hidden(false));
        el("div").class("stack").kid(video).kid(keys(vec![open, stop]))
    }

    fn turned(self) -> Option<u32> {
        self.turn.try_update_value(|turn| {
            *turn = turn.wrapping_add(1);
            *turn
        })
    }

    /// Whether nothing was opened or stopped since that turn, and the page is there.
    fn still(self, mine: u32) -> bool {
        self.turn.try_update_value(|turn| *turn) == Some(mine)
    }

    fn opened(self, mine: u32, camera: Result<Camera, NoCamera>) {
        let wanted = self.still(mine);
        let why = match camera {
            // The page was left, or the key pressed again, while the keeper was asked.
            Ok(camera) if !wanted => return camera.stop(),
            Ok(camera) => {
                // Before it shows anything: from now on the key and the page's end switch it off.
                self.camera.set_value(Some(camera.clone()));
                camera.show();
                return self.go_on(mine, camera);
            }
            Err(_) if !wanted => return,
            Err(why) => why,
        };
        self.on.set(false);
        let said = match why {
            NoCamera::NoReader => w::NO_READER,
            NoCamera::NotAllowed => w::NOT_ALLOWED,
            NoCamera::NotThere => w::NOT_THERE,
        };
        self.said.set(said.to_owned());
    }

    fn stop(self) {
        if self.turned().is_none() {
            return;
        }
        self.on.set(false);
        if let Some(camera) = self.camera.try_update_value(Option::take).flatten() {
            camera.stop();
        }
    }

    /// Looks again and again, until the camera is stopped, the page left, or all codes are there.
    fn go_on(self, mine: u32, camera: Camera) {
        if !self.still(mine) {
            // Stopped by its key, or gone with its part of the page.
            camera.stop();
        } else if camera.in_sight() {
            camera.look(move |texts, camera| {
                // What was seen last was seen before the key was pressed.
                let seen = if self.still(mine) { texts } else { Vec::new() };
                for text in seen {
                    self.feed(&text, None);
                }
                after(LOOK, move || self.go_on(mine, camera));
            });
        } else {
            self.stop();
        }
    }

    fn paste(self) -> El {
        let read = move || {
            self.said.set(String::new());
            let text = self.pasted.get_untracked();
            // Somebody may have copied the text of the file.
            if text.trim_start().starts_with('{') {
                self.looked.look(&text);
                return;
            }
            let mut any = false;
            for (at, line) in text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty()) {
                any = true;
                self.feed(line, Some(at + 1));
            }
            if any {
                self.pasted.set(String::new());
            } else {
                self.said.set(w::NOTHING.to_owned());
            }
        };
        let area = el("textarea")
            .attr("id", "codes-text")
            .test_id("codes-text")
            .attr("rows", "4")
            .attr("spellcheck", "false")
            .attr("autocapitalize", "off")
            .attr("autocomplete", "off")
            .typed(self.pasted);
        el("div")
            .class("field field-wide")
            .kid(el("label").attr("for", "codes-text").text(w::PASTE))
            .kid(area)
            .kid(keys(big(w::READ, "codes-read", read)))
    }

    fn progress(self) -> El {
        let progress = live(move || {
            let (read, all) = self.run.with(Run::count);
            if all == 0 {
                return Bit::Nothing;
            }
            let missing = self.run.with(Run::missing);
            let anew = move || {
                self.run.set(Run::default());
                self.said.set(String::new());
                self.looked.shut();
            };
            Bit::Many(vec![
                el("p")
                    .class("lead")
                    .test_id("codes-progress")
                    .text(&w::progress(read, all, &missing))
                    .into(),
                keys(big(w::ANEW, "codes-anew", anew)).into(),
            ])
        });
        let said = live(move || {
            let said = self.said.get();
            (!said.is_empty()).then(|| Notice::caution(said).view().test_id("codes-said"))
        });
        el("div").class("stack").attr("role", "status").kid(progress).kid(said)
    }

    /// Takes the text of one code in, from a line of several where there are.
    fn feed(self, text: &str, line: Option<usize>) {
        let code = match codes::read(text) {
            Ok(code) => code,
            Err(error) => {
                let said = w::wrong(error, line);
                self.said.update(|all| {
                    // Of several all are named; what the camera goes on seeing is named once.
                    if !all.is_empty() && line.is_some() {
                        all.push(' ');
                    } else {
                        all.clear();
                    }
                    all.push_str(&said);
                });
                return;
            }
        };
        let added = self.run.try_update_untracked(|run| {
            let added = run.add(code);
            let (read, all) = run.count();
            (added, (read == all).then(|| run.whole()))
        });
        match added {
            Some((Added::New, whole)) => {
                self.run.notify();
                if let Some(whole) = whole {
                    self.stop();
                    self.unpack(whole);
                }
            }
            Some((Added::OtherRun, _)) => self.said.set(w::OTHER_RUN.to_owned()),
            Some((Added::Known, _)) | None => {}
        }
    }

    fn unpack(self, whole: Option<(Packed, Vec<u8>)>) {
        match whole {
            None => self.said.set(w::NOT_WHOLE.to_owned()),
            Some((Packed::No, bytes)) => self.unpacked(Ok(bytes)),
            Some((Packed::Deflated, bytes)) => {
                squeeze::unpack(&bytes, MOST_UNPACKED, move |bytes| self.unpacked(bytes));
            }
        }
    }

    fn unpacked(self, bytes: Result<Vec<u8>, Unpacked>) {
        match bytes.and_then(|bytes| String::from_utf8(bytes).map_err(|_| Unpacked::Damaged)) {
            Ok(text) => self.looked.look(&text),
            Err(why) => {
                let said = match why {
                    Unpacked::NoWay => w::NO_WAY,
                    Unpacked::TooLarge => w::TOO_LARGE,
                    Unpacked::Damaged => w::NOT_WHOLE,
                };
                self.said.set(said.to_owned());
            }
        }
    }
}
