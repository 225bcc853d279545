//! Oil mist in the air of a room, from cutting or from a spray.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::oil_mist::{LIMIT_MG_PER_M3, allowed_mist_mg_per_h, mist_at_once, mist_concentration};
use handling::air::MOST_CHANGES;
use units::{Frequency, MassDensity, Quantity, Range, Volume, VolumeRate};

use super::common::said;
use super::{Asked, Outcome, Unanswered};

const OIL: Given<VolumeRate> = Given::quantity("oil", "48 mL/day", "common-practice", "oil that is used up at the cut");
const WAY: Given<&'static str> = Given::choice(
    "way",
    &["brushed", "smoking", "sprayed"],
    "brushed",
    "common-practice",
    "how it comes to the cut: 2 % of it become mist by a brush, 10 % where it smokes, 30 % sprayed",
);
const ONCE: Given<Option<Volume>> = Given::maybe("at_once", "oil thrown or sprayed into the air at once");
const DENSITY: Given<MassDensity> = Given::quantity("density", "0.88 g/mL", "typical-from-memory", "density of the oil");
const VOLUME: Given<Volume> = Given::quantity("volume", "40 m3", "common-practice", "air space of the room");
const CHANGES: Given<Frequency> = Given::quantity("air_changes", "0.5 /h", "common-practice", "changes of its air");

pub(super) static KIND: Kind = Kind {
    name: "mist",
    about: "oil mist in the air of a room, from cutting or from a spray, against what may be breathed",
    fields: &[OIL.field(), WAY.field(), ONCE.field(), DENSITY.field(), VOLUME.field(), CHANGES.field()],
};

/// Limit of plain mineral oil mist over a working day, mg/m³ (OSHA, NIOSH).
const OIL_MIST: f64 = 5.0;

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let (density, room): (MassDensity, Volume) = (answers.quantity(&DENSITY), answers.quantity(&VOLUME));
    let changes: Frequency = answers.quantity(&CHANGES);
    if answers.quantity(&OIL).base() <= 0.0 {
        return Err(Unanswered::Contradiction("`oil` is nothing: then nothing becomes mist".to_owned()));
    }
    if answers.maybe(&ONCE).is_some_and(|once| once.base() > 1e-3 * room.base()) {
        return Err(Unanswered::Contradiction(
            "`at_once` is more than a thousandth of the room: give what is sprayed in one go".to_owned(),
        ));
    }
    let share = match answers.word(&WAY) {
        "sprayed" => 0.3,
        "smoking" => 0.1,
        _ => 0.02,
    };
    let steady = mist_concentration(r, answers.quantity(&OIL), density, share, room, changes)?;
    let allowed = allowed_mist_mg_per_h(r, room, changes);
    // The share that becomes mist is known within a factor of three.
    let range = Range { low: steady / 3.0, likely: steady, high: steady * 3.0 };
    let mut outcome = Outcome::default()
        .numbers("mist, once the room has filled", "mg/m³", range)
        .says(format!("at its high end {}", judged(range.high)))
        .number("mist the room bears", "mg/h", allowed)
        .fact("limits", "0.5 mg/m³ of metalworking fluid (NIOSH), 5 mg/m³ of mineral oil mist (OSHA, NIOSH), 10 for 15 min (NIOSH)");
    if let Some(once) = answers.maybe(&ONCE) {
        let at_once: f64 = mist_at_once(r, once, density, room)?;
        outcome = outcome.number("mist from what goes into the air at once", "mg/m³", at_once).says(judged(at_once));
    }
    let fits = range.high <= LIMIT_MG_PER_M3;
    outcome = outcome.way("here, as it is", fits, judged(range.high));
    let less = match answers.word(&WAY) {
        "sprayed" => Some(("a brush or a paste in place of a spray", "fifteen times less of it gets into the air")),
        "smoking" => Some(("slower, or more oil, so that it does not smoke", "five times less of it gets into the air")),
        _ => None,
    };
    if let Some((way, why)) = less {
        outcome = outcome.way(way, true, why);
    }
    if !fits {
        let needed = changes.base() * 3600.0 * range.high / LIMIT_MG_PER_M3;
        let open = needed <= MOST_CHANGES;
        let why = format!("{} air changes an hour would do; a door stood open gives {MOST_CHANGES} at most", said(needed));
        outcome = outcome.way("with more air", open, why);
    }
    Ok(outcome.caution("Smoke you can see is over the limit. Wash oil off with soap, not with solvent.", "niosh-98-102"))
}

fn judged(mg_per_m3: f64) -> &'static str {
    if mg_per_m3 > OIL_MIST {
        "over every limit"
    } else if mg_per_m3 > LIMIT_MG_PER_M3 {
        "over what is recommended for cutting fluids; less, slower, or the door open"
    } else {
        "within what is recommended"
    }
}
