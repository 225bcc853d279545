//! The air of a room when a solvent is used in it: what one breathes against the limits, how near it is to burning, and the way out.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::room_air::{Air, CARE, HOME_MIXING, HOUSE_SHARE, after_source, changes_needed, re_entry};
use formulas::working::Recorder as _;
use handling::air::{Emission, Exposure, Held, Limited, MOST_CHANGES, Room, Use, Way, history, judge, near, of_parts, whose};
use reference::AIR_CHANGES_WITHIN;
use reference::substance::LimitKind;
use units::{Area, Frequency, Quantity, Range, Temperature, Time, Volume};

use super::contents::{CONTENTS, FLUID, contents};
use super::{Asked, Outcome, Unanswered};
use crate::picture::{Axis, Line, Picture};

const AMOUNT: Given<Volume> = Given::quantity("amount", "20 mL", "common-practice", "how much is used");
const WAY: Given<&'static str> =
    Given::choice("way", &["wiped", "tray", "sprayed"], "wiped", "common-practice", "wiped or brushed on, in an open tray, or sprayed");
const AREA: Given<Area> = Given::quantity("area", "0.1 m2", "common-practice", "face that is wiped, or surface of the tray");
const LASTS: Given<Time> = Given::quantity("time", "15 min", "common-practice", "how long the work lasts");
const VOLUME: Given<Volume> = Given::quantity("volume", "40 m3", "common-practice", "air space of the room");
const CHANGES: Given<Frequency> = Given::quantity(
    "air_changes",
    "0.5 /h",
    "common-practice",
    "changes of its air: 0.2 shut tight, 0.5 ordinary, 1 leaky, 5 to 15 with the door open",
);
const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "20 °C", "common-practice", "how warm it is");
const FLAMES: Given<bool> = Given::flag("flames", "no", "common-practice", "whether a flame, a glowing heater or sparks are in the room");

pub(super) static KIND: Kind = Kind {
    name: "air",
    about: "what one breathes when a solvent is used in a room, how near it is to burning, and the way out",
    fields: &[
        FLUID.field(),
        CONTENTS.field(),
        AMOUNT.field(),
        WAY.field(),
        AREA.field(),
        LASTS.field(),
        VOLUME.field(),
        CHANGES.field(),
        TEMPERATURE.field(),
        FLAMES.field(),
    ],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let of = contents(asked)?;
    let area: Area = answers.quantity(&AREA);
    let used = Use {
        amount: answers.quantity(&AMOUNT),
        way: match answers.word(&WAY) {
            "tray" => Way::Tray(area),
            "sprayed" => Way::Sprayed,
            _ => Way::Wiped(area),
        },
        lasts: answers.quantity(&LASTS),
    };
    if used.amount > MOST_OF_ROOM * answers.quantity(&VOLUME) {
        return Err(Unanswered::Contradiction("`amount` is more than a hundredth of the room: nobody uses that at once".to_owned()));
    }
    let changes: Frequency = answers.quantity(&CHANGES);
    let room = |times: f64| Room {
        volume: answers.quantity(&VOLUME),
        changes: changes * times,
        temperature: answers.quantity(&TEMPERATURE),
        flames: answers.flag(&FLAMES),
        attached_to_house: false,
    };
    // The still end decides.
    let still = room(1.0 / AIR_CHANGES_WITHIN);
    let leaves = of_parts(&of.parts, of.density, &used, &still)?;
    if leaves.is_empty() {
        return Ok(Outcome::default()
            .fact(of.name, "nothing of it evaporates at this temperature: the air is not what it harms")
            .caution("A mist of it is another matter: see the sheet `mist`.", "niosh-98-102"));
    }
    let found = judge(&leaves, &used, &still)?;
    let ends = [AIR_CHANGES_WITHIN, 1.0].map(|times| {
        let room = room(times);
        judge(&of_parts(&of.parts, of.density, &used, &room)?, &used, &room)
    });
    let [airy, likely] = ends;
    let (airy, likely) = (airy?, likely?);
    let mut outcome = Outcome::default();
    for (place, held) in found.held.iter().enumerate() {
        let value = |value: fn(&Held<'_>) -> f64| {
            let of = |exposure: &Exposure<'_>| exposure.held.get(place).map_or(0.0, |held| held.ppm(value(held)));
            Range { low: of(&airy), likely: of(&likely), high: of(&found) }
        };
        let name = &held.substance.name;
        outcome = outcome
            .numbers(format!("{name} over 8 h"), "ppm", value(|held| held.mean))
            .says(against(held, held.mean_limit))
            .numbers(format!("{name} in the worst 15 min"), "ppm", value(|held| held.short))
            .says(against(held, held.short_limit))
            .fact(format!("limits of {name}"), limits(held));
    }
    outcome = outcome
        .number("of its limits, all together", "%", found.of_limit * 100.0)
        .says(if found.of_limit > 1.0 {
            "too much"
        } else if found.of_limit > 0.5 {
            "near its limit"
        } else {
            "within them"
        })
        .number("of the lower flammable limit, at the work", "%", found.of_flammable * 100.0)
        .says(burning(&found, still.flames));
    let outcome = working(r, &found, &leaves, &still, outcome)?;
    Ok(out(&found, &used, outcome).picture(picture(&found, &leaves, &still)))
}

/// More liquid than this share of a room is a tank farm.
const MOST_OF_ROOM: f64 = 0.01;

fn against(held: &Held<'_>, limit: Option<Limited>) -> String {
    limit.map_or_else(
        || "no limit is known here".to_owned(),
        |limit| format!("{} ppm is allowed ({})", shown(held.ppm(limit.mg_per_m3)), whose(limit.regime)),
    )
}

fn shown(value: f64) -> String {
    units::show_number(value, units::Digits::Significant(3))
}

/// The limits of every regime.
fn limits(held: &Held<'_>) -> String {
    let kind = |kind: LimitKind| match kind {
        LimitKind::Mean8h => "8 h",
        LimitKind::Mean15min => "15 min",
        LimitKind::Ceiling => "never above",
    };
    let mut said: Vec<String> = held
        .substance
        .limits
        .iter()
        .map(|limit| {
            let ppm = held.ppm(limit.at.mg_per_m3(held.molar_mass));
            format!("{} {} {} ppm", whose(Some(limit.regime)), kind(limit.kind), shown(ppm))
        })
        .collect();
    if held.substance.lowest_feasible.is_some() {
        said.push("NIOSH: as little as can be done, for it may cause cancer".to_owned());
    }
    if said.is_empty() { "none known here".to_owned() } else { said.join("; ") }
}

fn burning(found: &Exposure<'_>, flames: bool) -> &'static str {
    match (found.is_near_burning(), flames) {
        (true, true) => "and a flame is in the room: it may flash; put it out first, or do not begin",
        (true, false) => "more than a tenth: no flame, switch or spark until it has cleared",
        (false, true) => "but a flame is in the room: put it out before a can is opened",
        (false, false) => "less than a tenth, as it should be",
    }
}

/// The steps for the substance that is nearest its limit.
fn working(
    r: &mut Notebook,
    found: &Exposure<'_>,
    leaves: &[Emission<'_>],
    room: &Room,
    mut outcome: Outcome,
) -> Result<Outcome, Unanswered> {
    let Some(worst) = found.worst() else { return Ok(outcome) };
    let Some(emission) = leaves.iter().find(|one| one.substance.key == worst.substance.key) else { return Ok(outcome) };
    let air = Air { volume: room.volume, changes: room.changes, mixing: HOME_MIXING };
    let lasts = Time::from_base(emission.lasts * 3600.0);
    let held = after_source(r, &air, emission.rate, 0.0, lasts)?;
    near(r, emission.rate)?;
    if let Some(limit) = worst.mean_limit {
        let needed = changes_needed(r, emission.rate, limit.mg_per_m3, room.volume, HOME_MIXING)?;
        outcome = outcome.number("air change that would keep it at that limit, were it done all day", "/h", needed.base() * 3600.0);
        if held > limit.mg_per_m3 {
            let wait = re_entry(r, &air, held, limit.mg_per_m3)?;
            outcome = outcome.exact("time until the room has cleared to its limit", wait);
        }
    }
    r.caution(CARE);
    Ok(outcome)
}

fn out(found: &Exposure<'_>, used: &Use, outcome: Outcome) -> Outcome {
    let fits = found.of_limit <= 1.0;
    let mut outcome = outcome.way("here, as it is", fits, if fits { "within the limits" } else { "over a limit" });
    if !fits {
        // Told as they are asked for, of which the still end counts.
        let told = |changes: Frequency| changes.base() * 3600.0 * AIR_CHANGES_WITHIN;
        outcome = match found.changes_needed.map(told).filter(|an_hour| *an_hour <= MOST_CHANGES) {
            // Rounded up, so that it is enough when it is asked for.
            Some(an_hour) => outcome.way(
                "with more air",
                true,
                format!("{:.1} air changes an hour: the door open, a fan blowing outward", (an_hour * 10.0).ceil() / 10.0),
            ),
            None => outcome.way("with more air", false, "no open door gives enough: what one breathes at the work alone is too much"),
        };
        if let Some(amount) = found.amount_allowed {
            let share = amount.base() / used.amount.base();
            outcome = outcome
                .exact("could be used here at once", amount)
                .says(format!("{} % of what was asked", units::show_number(share * 100.0, units::Digits::Significant(2))));
        }
        outcome = outcome.way("outdoors", true, "upwind, with nobody downwind");
    }
    outcome
        .caution(format!("Beside a house, about {:.1} % of what the garage holds gets into it.", HOUSE_SHARE * 100.0), "batterman-2007")
        .caution(
            "Vapour is heavier than air: it runs along the floor to the flame you forgot. Open rags go on giving it off: lidded metal can.",
            "common-practice",
        )
}

/// Concentration over time at the work, with the limits of the worst substance.
fn picture(found: &Exposure<'_>, leaves: &[Emission<'_>], room: &Room) -> Picture {
    const POINTS: u32 = 160;
    const HOURS: f64 = 8.0;
    let mut lines = Vec::new();
    let mut most = 0.0_f64;
    for (emission, held) in leaves.iter().zip(&found.held) {
        let air = history(emission, room);
        // A point either side of the end of the work shows how the air at the work falls to the room's.
        let mut hours: Vec<f64> = (0..=POINTS).map(|i| HOURS * f64::from(i) / f64::from(POINTS)).collect();
        hours.extend([0.0, emission.lasts * 0.999_9, emission.lasts * 1.000_1].into_iter().filter(|at| *at <= HOURS));
        hours.sort_by(f64::total_cmp);
        let at = |hour: f64| held.ppm(air.held(hour) + if hour <= emission.lasts { held.near } else { 0.0 });
        let points: Vec<(f64, f64)> = hours.into_iter().map(|hour| (hour, at(hour))).collect();
        most = points.iter().map(|(_, ppm)| *ppm).fold(most, f64::max);
        lines.push(Line { name: format!("{} at the work", held.substance.name), points });
    }
    if let Some(worst) = found.worst() {
        for (limit, name) in [(worst.mean_limit, "8 h limit"), (worst.short_limit, "15 min limit")] {
            let Some(limit) = limit else { continue };
            let ppm = worst.ppm(limit.mg_per_m3);
            most = most.max(ppm);
            lines.push(Line { name: format!("{name} of {}", worst.substance.name), points: vec![(0.0, ppm), (HOURS, ppm)] });
        }
    }
    Picture {
        title: "The air through the day".to_owned(),
        x: Axis { label: "hours".to_owned(), low: 0.0, high: HOURS, logarithmic: false },
        y: Axis { label: "ppm".to_owned(), low: 0.0, high: 1.08 * most.max(1.0), logarithmic: false },
        lines,
        bands: Vec::new(),
        marks: Vec::new(),
    }
}
