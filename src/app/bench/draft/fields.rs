//! The fields of the Bench: their names, what they are of, and their examples.

use super::BenchDraft;
#[cfg(target_arch = "wasm32")]
use super::BenchTyped;

macro_rules! fields {
    ($($(#[$doc:meta])* $field:ident = $example:literal;)+) => {
        /// A field of the Bench.
        #[derive(Clone, Copy)]
        #[allow(non_camel_case_types)] // named as the methods and the stored text
        pub enum Slot { $($(#[$doc])* $field,)+ }

        /// Name and example of every field.
        pub(super) const FIELDS: &[(&str, &str)] = &[$((stringify!($field), $example),)+];

        impl BenchDraft {
            $($(#[$doc])* pub fn $field(&self) -> &str { self.text(Slot::$field) })+
        }

        #[cfg(target_arch = "wasm32")]
        impl BenchTyped {
            $($(#[$doc])* pub fn $field(self) -> crate::app::graph::RwSignal<String> {
                self.text(Slot::$field)
            })+
        }
    };
}

fields! {
    /// Yard: hives.
    hives = "10";
    /// Yard: boxes with traps on each hive.
    boxes = "2";
    /// Yard: one trap holds.
    holds = "20";
    /// Yard: its unit.
    holds_unit = "mL";
    /// Yard: traps a box.
    a_box = "2";
    /// Yard: how full.
    fill = "½";
    /// Yard: reserve.
    reserve = "25 %";
    /// Yard: one bottle holds; may be empty.
    bottle = "";
    /// Yard: its unit.
    bottle_unit = "mL";
    /// Keep: name of the yard.
    keep_name = "My yard";
    /// Keep: hive tags; empty follows the number of hives.
    keep_tags = "";
    /// Keep: depths of the boxes, from the floor up, by code, separated by spaces; short lists go on with `deep`.
    keep_depths = "";
    /// Keep: the keeper's word for the trap.
    keep_trap = "Oil trap";
    /// Keep: how it is built: `between`, `one_well`, `two_wells`.
    keep_form = "between";
    /// Keep: `yes` when the trap is used again, `no` when it is thrown away; empty goes along with how it is built.
    keep_again = "";
    /// Keep: `today`, `earlier` or `not_yet`.
    keep_filled = "today";
    /// Keep: the earlier date.
    keep_filled_on = "";
    /// Keep: longest days between services.
    keep_days = "14";
    /// Refill: day of the last service; empty is today.
    refill_last = "";
    /// Refill: longest days.
    refill_max = "14";
    /// Refill: level left after service.
    refill_level = "½";
    /// Refill: lowest level that still works.
    refill_floor = "30 %";
    /// Refill: level found at the end of an earlier stretch; empty leaves the loss unknown.
    refill_found = "";
    /// Refill: days of that stretch; empty leaves the loss unknown.
    refill_stretch = "";
    /// Refill: beetles until the upper mark; may be empty.
    refill_room = "";
    /// Refill: beetles caught a day; may be empty.
    refill_catch = "";
    /// Spill: inner length along the tilt.
    spill_length = "65";
    /// Spill: its unit.
    spill_length_unit = "mm";
    /// Spill: inner depth.
    spill_depth = "20";
    /// Spill: its unit.
    spill_depth_unit = "mm";
    /// Spill: how full.
    spill_fill = "½";
    /// Fit: depth of the box: `deep`, `medium`, `shallow`, `own`.
    fit_box = "deep";
    /// Fit: own frame side.
    fit_side = "";
    /// Fit: its unit.
    fit_side_unit = "mm";
    /// Fit: outside depth of the trap.
    fit_depth = "75";
    /// Fit: its unit.
    fit_depth_unit = "mm";
    /// Fit: outside width of the trap where it passes between top bars.
    fit_width = "7";
    /// Fit: its unit.
    fit_width_unit = "mm";
    /// Fit: outside length of the trap.
    fit_length = "95";
    /// Fit: its unit.
    fit_length_unit = "mm";
    /// Fit: gap between top bars; empty takes the usual one.
    fit_gap = "";
    /// Fit: its unit.
    fit_gap_unit = "mm";
    /// Fit: inside length of the box; empty takes the usual one.
    fit_inside = "";
    /// Fit: its unit.
    fit_inside_unit = "mm";
    /// Packs: pieces needed.
    packs_need = "40";
    /// Packs: rows shown.
    packs_rows = "3";
    /// Packs: pieces in the first pack.
    packs_size1 = "1";
    /// Packs: its price.
    packs_price1 = "2.20";
    /// Packs: pieces in the second pack.
    packs_size2 = "5";
    /// Packs: its price.
    packs_price2 = "9.50";
    /// Packs: pieces in the third pack.
    packs_size3 = "12";
    /// Packs: its price.
    packs_price3 = "18.00";
    /// Packs: pieces in the fourth pack.
    packs_size4 = "";
    /// Packs: its price.
    packs_price4 = "";
    /// Packs: pieces in the fifth pack.
    packs_size5 = "";
    /// Packs: its price.
    packs_price5 = "";
    /// Packs: delivery; may be empty.
    packs_fee = "";
    /// Packs: goods value from which delivery is free; may be empty.
    packs_free = "";
    /// Oil: services in the season.
    oil_services = "10";
    /// Oil: oil a service takes.
    oil_each = "400";
    /// Oil: its unit.
    oil_each_unit = "mL";
    /// Oil: share spilled and left in bottles.
    oil_spill = "10 %";
    /// Oil: how much one visit differs from the next; may be empty.
    oil_spread = "";
    /// Oil: its unit.
    oil_spread_unit = "mL";
    /// Oil: first container.
    oil_size1 = "1";
    /// Oil: its unit.
    oil_unit1 = "L";
    /// Oil: its price.
    oil_price1 = "4.00";
    /// Oil: second container.
    oil_size2 = "3";
    /// Oil: its unit.
    oil_unit2 = "L";
    /// Oil: its price.
    oil_price2 = "9.90";
    /// Oil: third container.
    oil_size3 = "";
    /// Oil: its unit.
    oil_unit3 = "L";
    /// Oil: its price.
    oil_price3 = "";
    /// Bodies: beetles in the trap.
    bodies_count = "100";
    /// Bodies: level read.
    bodies_level = "½";
    /// Bodies: one trap holds.
    bodies_holds = "20";
    /// Bodies: its unit.
    bodies_holds_unit = "mL";
    /// Open: hives in the yard.
    open_hives = "40";
    /// Open: share that is affected, if any is.
    open_share = "10 %";
    /// Open: how sure to see one.
    open_sure = "95 %";
    /// Open: chance that an affected hive that is opened shows it.
    open_notice = "85 %";
    /// Open: hives opened, with none seen; empty counts as many as are to be opened.
    open_opened = "";
    /// Open: the seed of the draw; empty until one is drawn.
    open_seed = "";
    /// Mesh: wires to the inch.
    mesh_count = "8";
    /// Mesh: thickness of a wire.
    mesh_wire = "0.43";
    /// Mesh: its unit.
    mesh_wire_unit = "mm";
    /// Mesh: a crack; may be empty.
    mesh_crack = "";
    /// Mesh: its unit.
    mesh_crack_unit = "mm";
    /// Freezer: frames.
    freezer_frames = "160";
    /// Freezer: frames that fit in at a time.
    freezer_fit = "48";
    /// Freezer: how cold it is.
    freezer_cold = "-18";
    /// Freezer: its unit.
    freezer_cold_unit = "C";
    /// Freezer: hours until the core of the comb is cold.
    freezer_chill = "24";
    /// Freezer: hours from there.
    freezer_hold = "48";
    /// Ground: hives.
    ground_hives = "10";
    /// Ground: hives in a row.
    ground_in_row = "10";
    /// Ground: from the middle of a hive to that of the next.
    ground_apart = "0.9";
    /// Ground: its unit.
    ground_apart_unit = "m";
    /// Ground: from the middle of a row to that of the next.
    ground_rows = "3";
    /// Ground: its unit.
    ground_rows_unit = "m";
    /// Ground: how far round a hive.
    ground_reach = "0.9";
    /// Ground: its unit.
    ground_reach_unit = "m";
    /// Ground: a hive across its entrance.
    ground_width = "41.3";
    /// Ground: its unit.
    ground_width_unit = "cm";
    /// Ground: a hive from front to back.
    ground_length = "50.5";
    /// Ground: its unit.
    ground_length_unit = "cm";
    /// Ground: paved; may be empty.
    ground_paved = "";
    /// Ground: so much of the product by its label; empty until it is typed, since no rate is built in.
    ground_rate = "";
    /// Ground: on so much ground.
    ground_per = "1";
    /// Ground: unit of all areas.
    ground_unit = "m2";
    /// Ground: water by the label on the same ground; may be empty.
    ground_water = "";
    /// Ground: its unit.
    ground_water_unit = "L";
    /// Order: hives alive.
    order_alive = "30";
    /// Order: share of hives that the winter takes, or a span.
    order_winter = "20 %";
    /// Order: splits planned.
    order_splits = "0";
    /// Order: boxes with traps on each hive.
    order_boxes = "1";
    /// Order: traps in each box.
    order_a_box = "2";
    /// Order: traps lost last season.
    order_lost = "";
    /// Order: traps that were in service.
    order_of = "";
    /// Order: spares.
    order_spares = "5";
    /// Order: good traps in store.
    order_stock = "0";
    /// Order: pieces in pack 1 of thing 1.
    order_size11 = "1";
    /// Order: its price.
    order_price11 = "2.20";
    /// Order: pieces in pack 2 of thing 1.
    order_size12 = "5";
    /// Order: its price.
    order_price12 = "9.50";
    /// Order: pieces in pack 3 of thing 1.
    order_size13 = "12";
    /// Order: its price.
    order_price13 = "18.00";
    /// Order: pieces of thing 2.
    order_need2 = "";
    /// Order: pieces in pack 1 of thing 2.
    order_size21 = "";
    /// Order: its price.
    order_price21 = "";
    /// Order: pieces in pack 2 of thing 2.
    order_size22 = "";
    /// Order: its price.
    order_price22 = "";
    /// Order: pieces of thing 3.
    order_need3 = "";
    /// Order: pieces in pack 1 of thing 3.
    order_size31 = "";
    /// Order: its price.
    order_price31 = "";
    /// Order: pieces in pack 2 of thing 3.
    order_size32 = "";
    /// Order: its price.
    order_price32 = "";
    /// Order: price of the delivery.
    order_fee = "";
    /// Order: price of goods from which it is free.
    order_free = "";
    /// Cost: hives over the season.
    cost_hives = "10";
    /// Cost: what was used up.
    cost_used = "60";
    /// Cost: what was paid for what lasts.
    cost_durable = "120";
    /// Cost: seasons that lasts.
    cost_seasons = "3";
    /// Cost: trips.
    cost_trips = "10";
    /// Cost: price of one.
    cost_trip = "12";
    /// Cost: hours of work.
    cost_hours = "";
    /// Cost: worth of one.
    cost_hour = "";
    /// Cost: traps in service.
    cost_traps = "40";
    /// Cost: days of the season.
    cost_days = "180";
    /// Cost: honey in kilograms.
    cost_honey = "";
    /// Cost: value of a colony.
    cost_colony = "150";
    /// Cover: sides of comb that bees cover.
    cover_sides = "22";
    /// Cover: frames of drawn comb.
    cover_frames = "16";
    /// Cover: frames of a box.
    cover_a_box = "8";
    /// Closing up: notch screens.
    closing_screens = "10";
    /// Closing up: one side of a screen.
    closing_cut = "12";
    /// Closing up: the other side.
    closing_cut_to = "8";
    /// Closing up: unit of both.
    closing_cut_unit = "cm";
    /// Closing up: one side of a sheet.
    closing_sheet = "100";
    /// Closing up: the other side.
    closing_sheet_to = "50";
    /// Closing up: unit of both.
    closing_sheet_unit = "cm";
    /// Closing up: all cracks together; may be empty.
    closing_cracks = "8";
    /// Closing up: its unit.
    closing_cracks_unit = "m";
    /// Closing up: sealant on top.
    closing_reserve = "10 %";
    /// Closing up: how far a tube goes; empty until it is typed.
    closing_tube = "";
    /// Closing up: its unit.
    closing_tube_unit = "m";
    /// Closing up: boards to coat; may be empty.
    closing_boards = "";
    /// Closing up: boards that one tin or block is enough for; empty until it is typed.
    closing_coats = "";
    /// Closing up: the widest entrance that is wanted now; empty until it is typed.
    closing_entrance = "";
    /// Closing up: its unit.
    closing_entrance_unit = "mm";
    /// Split: frames of bees in the hive; empty until they are typed or taken from a hive.
    split_bees = "";
    /// Split: frames of comb that stay; empty until then.
    split_stays = "";
    /// Split: frames of comb the new hive gets.
    split_goes = "5";
    /// Split: share of the bees carried over that flies back.
    split_back = "30 %";
    /// Hives drawn by lot to be opened, yard by yard.
    decide_drawn = "";
    /// Ground of a yard: `larvae`, `all` or `tags`.
    decide_ground = "larvae";
    /// Ground of a yard: the tags that were chosen.
    decide_tags = "";
    /// Ground of a yard: how much of the product a pack holds, in the label's measure; empty until it is typed.
    decide_pack = "";
    /// Two counts: beetles of the first.
    counts_first = "60";
    /// Two counts: its trap-days.
    counts_first_days = "500";
    /// Two counts: beetles of the second.
    counts_second = "96";
    /// Two counts: its trap-days.
    counts_second_days = "500";
    /// Two counts: how many times as much as by chance hives spread.
    counts_spread = "3";
    /// Catch: the yard; empty is the first.
    catch_yard = "";
    /// Catch: `years`, or `day` for before and after a day.
    catch_by = "years";
    /// Catch: that day.
    catch_day = "";
    /// Trial: pairs of hives.
    trial_pairs = "10";
    /// Trial: beetles that a hive without it catches over the trial.
    trial_mean = "20";
    /// Trial: how much hives clump; the smaller, the more.
    trial_clump = "2";
    /// Trial: share of the catch that it leaves.
    trial_left = "½";
    /// Trial from the book: what is tried.
    trial_named = "";
    /// Trial from the book: the day on which it is opened.
    trial_until = "";
    /// Trial from the book: the hives that were drawn, yard by yard (`decide/draws`); empty until some are.
    trial_drawn = "";
    /// Dates: what was found: `adults`, `tiny`, `full_grown`, `leaving`, `in_soil`.
    dates_seen = "full_grown";
    /// Dates: day of the find; empty is today.
    dates_on = "";
    /// Dates: the yard whose temperatures count; `typed` counts those that are typed, empty the first yard there is.
    dates_yard = "";
    /// Dates: the coolest the soil is.
    dates_soil_low = "24";
    /// Dates: its unit.
    dates_soil_low_unit = "C";
    /// Dates: the warmest the soil is.
    dates_soil_high = "28";
    /// Dates: its unit.
    dates_soil_high_unit = "C";
    /// Dates: the coolest the comb is.
    dates_hive_low = "34";
    /// Dates: its unit.
    dates_hive_low_unit = "C";
    /// Dates: the warmest the comb is.
    dates_hive_high = "35";
    /// Dates: its unit.
    dates_hive_high_unit = "C";
    /// Dates: the bees on the comb, where a yard's temperatures count: `strong`, `weak`, `none`.
    dates_bees = "strong";
    /// Dates: the ground: `moist`, `dry`, or `rain` when it became moist on a day.
    dates_ground = "moist";
    /// Dates: that day.
    dates_rain = "";
    /// Season: the climate: a yard, or a place in the list of known ones; empty is the first yard there is, or the
    /// first place.
    season_climate = "";
    /// Season: degrees warmer, with a minus cooler.
    season_shift = "0";
    /// Season: `full_sun`, `part_shade`, `shade`; empty is as written down of the yard.
    season_shade = "";
    /// Season: the ground is dry until this day; may be empty.
    season_dry = "";
    /// Rhythm: how warm the comb is.
    rhythm_comb = "34";
    /// Rhythm: its unit.
    rhythm_comb_unit = "C";
    /// Rhythm: days from look to look.
    rhythm_every = "14";
    /// Rhythm: chance that a look finds what is there.
    rhythm_notice = "100 %";
    /// Rhythm: share of broods that is wanted.
    rhythm_wanted = "80 %";
    /// Rhythm: `looks`, or `visits` where trap work counts as a look.
    rhythm_by = "looks";
    /// Rhythm: the yard; empty is the first.
    rhythm_yard = "";
    /// Rhythm: the hive that is drawn; empty is the first.
    rhythm_hive = "";
    /// Honey: when the bees were off; empty is now.
    honey_off = "";
    /// Honey: the warmest the room is.
    honey_room = "28";
    /// Honey: its unit.
    honey_room_unit = "C";
    /// Honey: the coolest the room is; empty stays as warm.
    honey_low = "";
    /// Honey: its unit.
    honey_low_unit = "C";
    /// Honey: hours until it is to be spun.
    honey_goal = "24";
    /// Honey: hours after which it must be.
    honey_limit = "48";
    /// Honey: hours of work before the limit.
    honey_work = "6";
    /// Honey: hours of these for setting up, settling and cleaning.
    honey_beside = "1";
    /// Honey: frames in a super.
    honey_frames = "10";
    /// Honey: frames that the extractor takes.
    honey_load = "4";
    /// Honey: minutes for a load.
    honey_spin = "15";
    /// Honey: seconds to uncap a frame.
    honey_uncap = "60";
}
