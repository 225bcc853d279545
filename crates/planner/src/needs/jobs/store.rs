//! Storing bright steel: the damp it will see in this room, and the coat that outlasts it.
//!
//! A year is run at the metal, hour by hour: hours count from 60 % relative humidity, fully from 80 %, and threefold while it sweats. Each
//! coat has a budget of such hours in the table of finishes.

#![expect(non_snake_case, reason = "symbols as in formulas")]

use formulas::given;
use formulas::working::Recorder;
use handling::bars::COMBUSTION;
use shop::{Given, Kind};
use units::{Area, Quantity};

use super::common::{degrease, wipe};
use super::{Bench, Step, Task};
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;

const MONTHS: Given<f64> = Given::number("months", "6", "common-practice", "how long it is put away");
const BOXED: Given<bool> = Given::flag("boxed", "false", "common-practice", "whether it lies in a box or bag that stays shut");
const SLIDING: Given<bool> = Given::flag("sliding", "false", "common-practice", "whether sliding or measuring faces are among it");
const MATERIALS: Given<Vec<String>> = Given::materials("materials", "mild-steel", "common-practice", "what it is made of");
const AREA: Given<Area> = Given::quantity("area", "0.25 m2", "common-practice", "bright face");

pub(super) static KIND: Kind = Kind {
    name: "store",
    about: "keeping bright steel from rusting while it is put away",
    fields: &[MONTHS.field(), BOXED.field(), SLIDING.field(), MATERIALS.field(), AREA.field()],
};

/// Coats in the order of their trouble: the first that lasts is the least work to take off again.
const COATS: [&str; 6] = ["rust-oil", "water-displacing-film", "preservative-oil", "paste-wax", "soft-wax", "hard-wax"];

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (materials, area): (_, Area) = (answers.words(&MATERIALS), answers.quantity(&AREA));
    let months = answers.number(&MONTHS);
    let year = bench.damp_year()?;
    given!(r, D["h"] = year.dose(months), "damp hours it has to outlast, begun at the worst time");
    let sliding = answers.flag(&SLIDING);
    let mut steps =
        vec![degrease(bench, materials, wipe(area), false).mind("Gloves from here on: a fingerprint rusts first.", "common-practice")];
    let put_away = Step::new("put away", "thin and without a gap, edges and holes too").spares(materials);
    steps.push(if answers.flag(&BOXED) && !sliding {
        let row = bench.finish_rule("closed-box")?;
        put_away
            .ranked(&row.ranked, row.why.clone(), row.source.as_str())
            .covers(bench, &["rust-oil"], &[], area)
            .dose_of(reference::Form::Solid, Dose::about(sheets(area), DoseUnit::Piece))
            .mind(
                "Every face within 300 mm (12 in) of the sheet; keep the box shut; check copper alloys, zinc and \
                     seals.",
                "common-practice",
            )
            .mind(
                "The sheet may hold a nitrite: gloves, never with acid (poisonous gas), never in or near a coolant (nitrosamines, which cause \
                 cancer).",
                "common-practice",
            )
    } else {
        open(bench, put_away, D, sliding, area)?
    });
    Ok(vec![Task { consequence: Consequence::Spoils, times_a_year: bench.times_a_year(), steps }])
}

fn open(bench: &Bench<'_>, step: Step, hours: f64, sliding: bool, area: Area) -> Result<Step, Complaint> {
    let faces = bench.finish_rule("sliding-or-measuring-face")?;
    let coats = COATS.iter().copied().filter(|coat| !sliding || !faces.never.iter().any(|never| never == coat));
    let budget = |coat: &str| bench.reference.finishes.get(coat).and_then(|row| row.dose_budget).unwrap_or(0.0);
    let (mut right, mut will_do): (Vec<&str>, Vec<&str>) = coats.partition(|coat| budget(coat) >= hours);
    let short = right.is_empty();
    if short {
        // Nothing allowed here lasts so long: the longest must be put on again.
        will_do.sort_by(|one, other| budget(other).total_cmp(&budget(one)));
        right = will_do.drain(..will_do.len().min(1)).collect();
    }
    will_do.retain(|coat| 2.0 * budget(coat) >= hours);
    let why = if sliding { faces.why.clone() } else { format!("it must outlast about {hours:.0} damp hours in this room") };
    let lasting = right.first().map_or(0.0, |coat| budget(coat));
    let year = bench.damp_year()?;
    let often = year.renewals(lasting.max(1.0))?;
    Ok(step
        .classes(&right, &will_do, why, "common-practice")
        .covers(bench, &right, &will_do, area)
        .mind_if(
            short,
            format!("It sees about {hours:.0} damp hours and lasts about {lasting:.0}: put it on again {}.", times(often)),
            "common-practice",
        )
        .mind(year.words(), "iso-9223")
        .mind_if(year.is_wet(), year.ways_out(), "common-practice")
        .mind_if(!will_do.is_empty(), "What only will do there is put on again at half time.", "common-practice")
        .never(&COMBUSTION)
        .mind("Known within a factor of two, a coat within three: look at it after a month, and trust what you see.", "common-practice"))
}

fn times(often: usize) -> String {
    match often {
        0 | 1 => "once a year".to_owned(),
        often => format!("{often} times a year"),
    }
}

/// Sheets of inhibitor paper: a square metre of paper to a square metre of steel, about A4 each.
fn sheets(area: Area) -> f64 {
    const A4_M2: f64 = 0.0624;
    (area.base() / A4_M2).ceil()
}
