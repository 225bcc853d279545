//! Oil, grease or dry: gates first, then a score for each fact of the place.
//!
//! A lubricant that runs carries chips away and cools; one that stays reaches where a can does not; one that dries holds no grit.
//! Each fact adds to each form what *common practice* gives it; the highest wins, and within one point oil does, renewed often.
//! The chapter is pure: facts of a place in, standings and reasons out. A manual, and what a kind of point says itself, come before it.

use units::{Temperature, Velocity};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::velocity::meter_per_second;

/// What a fitting leaves open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Fitting {
    /// A ball oiler, cup, hole, wick or drip: it feeds oil.
    FeedsOil,
    /// A bath, splash or pump: it carries oil.
    CarriesOil,
    /// A nipple or a screw-down cap: it feeds grease.
    FeedsGrease,
    /// Nothing, or a brush: all forms are open.
    #[default]
    Open,
}

/// How a place is reached.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Reach {
    /// In the open.
    Easy,
    /// With some trouble.
    #[default]
    Fair,
    /// Only with a guard off.
    Hard,
}

/// What lubricant the clearance of a place was designed for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Clearance {
    /// Close, without a groove: oil.
    Oil,
    /// Looser, with a groove or a seal: grease.
    Grease,
    /// Neither in particular.
    #[default]
    Open,
}

/// The facts of a place.
#[derive(Debug, Clone, Copy, PartialEq)]
#[expect(clippy::struct_excessive_bools, reason = "each is one fact that holds of the place or does not")]
pub struct Facts {
    /// The fitting.
    pub fitting: Fitting,
    /// How it is reached.
    pub reach: Reach,
    /// Chips reach it.
    pub chips: bool,
    /// Abrasive dust reaches it; false where it is shut in.
    pub grit: bool,
    /// Oil is fed so freely that it flushes the dust out.
    pub flushed: bool,
    /// Coolant washes it.
    pub coolant: bool,
    /// It stands outdoors.
    pub outdoors: bool,
    /// How its clearance was designed.
    pub clearance: Clearance,
    /// Rubbing or rolling speed.
    pub speed: Velocity,
    /// Mean diameter × speed of a rolling bearing, mm·rev/min.
    pub speed_factor: Option<f64>,
    /// Slow, heavy or shocked.
    pub heavy: bool,
    /// Lubricant runs off it.
    pub leaks: bool,
    /// The coldest start.
    pub coldest: Temperature,
    /// The hottest it gets in running.
    pub hottest: Temperature,
    /// Nobody knows what it was designed for.
    pub unsure: bool,
}

impl Default for Facts {
    /// A place of which nothing in particular holds, at 20 °C.
    fn default() -> Self {
        let room = Temperature::new::<degree_celsius>(20.0);
        Self {
            fitting: Fitting::default(),
            reach: Reach::default(),
            chips: false,
            grit: false,
            flushed: false,
            coolant: false,
            outdoors: false,
            clearance: Clearance::default(),
            speed: Velocity::default(),
            speed_factor: None,
            heavy: false,
            leaks: false,
            coldest: room,
            hottest: room,
            unsure: false,
        }
    }
}

/// Above this no grease stays in a rolling bearing, mm·rev/min (*The Tribology Handbook*, C8: 300 to 350 thousand).
pub const GREASE_SPEED_LIMIT: f64 = 300_000.0;
/// Above this oils and greases burn off, °C.
pub const HOTTEST_C: f64 = 150.0;
const COLD_C: f64 = 5.0;
const FAST_M_PER_S: f64 = 2.0;

/// One row of the score table.
#[derive(Debug, Clone, Copy)]
pub struct Row {
    /// The fact, in words.
    pub fact: &'static str,
    /// Points for oil, grease and dry film.
    pub points: [i32; 3],
    holds: fn(&Facts) -> bool,
}

const fn row(fact: &'static str, points: [i32; 3], holds: fn(&Facts) -> bool) -> Row {
    Row { fact, points, holds }
}

/// The score table: *common practice, no source*.
pub const TABLE: [Row; 14] = [
    row("hard to reach", [0, 3, 1], |facts| facts.reach == Reach::Hard),
    row("open and easy to reach", [2, 0, 0], |facts| facts.reach == Reach::Easy),
    row("chips reach it", [2, -2, 1], |facts| facts.chips),
    row("abrasive dust reaches it", [-1, -3, 4], |facts| facts.grit && !facts.flushed),
    row("abrasive dust reaches it, and oil flushes it out", [2, -3, 4], |facts| facts.grit && facts.flushed),
    row("coolant washes it", [-1, 2, -2], |facts| facts.coolant),
    row("close clearance without groove", [3, -3, 0], |facts| facts.clearance == Clearance::Oil),
    row("made for grease", [-1, 3, 0], |facts| facts.clearance == Clearance::Grease),
    row("fast", [4, -4, -3], |facts| facts.speed.get::<meter_per_second>() > FAST_M_PER_S),
    row("slow, heavy or shocked", [1, 2, 0], |facts| facts.heavy),
    row("runs off", [-1, 2, 1], |facts| facts.leaks),
    row("cold starts", [0, -2, 1], |facts| facts.coldest < Temperature::new::<degree_celsius>(COLD_C)),
    row("stands outdoors", [-1, 2, 0], |facts| facts.outdoors),
    row("nobody knows what it was made for", [1, 0, 0], |facts| facts.unsure),
];

/// How a form of lubricant stands at a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Standing {
    /// What the place wants.
    Right,
    /// Serves, with a drawback.
    WillDo,
    /// Does not serve.
    Wrong,
    /// Does harm.
    Harmful,
}

/// Oil, grease and dry film at a place, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Form {
    /// How oil stands.
    pub oil: Standing,
    /// How grease stands.
    pub grease: Standing,
    /// How a dry film stands.
    pub dry: Standing,
    /// The scores of oil, grease and dry film; none where a gate decided.
    pub scores: Option<[i32; 3]>,
    /// The reason, as a clause.
    pub why: String,
}

/// Oil, grease or dry film for a place.
///
/// # Source
/// *Common practice, no source*; the speed limit of grease is *The Tribology Handbook*'s.
///
/// # Example
/// A lathe's open slide in chips, easy to reach: oil (*common practice*). A ball oiler takes oil whatever the place; grease blocks it.
/// ```
/// use formulas::lubricant_form::{Facts, Fitting, Reach, Standing, form};
/// let slide = form(&Facts { reach: Reach::Easy, chips: true, ..Facts::default() });
/// assert_eq!((slide.oil, slide.scores), (Standing::Right, Some([4, -2, 1])));
/// let oiler = form(&Facts { fitting: Fitting::FeedsOil, ..Facts::default() });
/// assert_eq!(oiler.grease, Standing::Harmful);
/// ```
#[must_use]
pub fn form(facts: &Facts) -> Form {
    gate(facts).unwrap_or_else(|| scored(facts))
}

fn gate(facts: &Facts) -> Option<Form> {
    use Standing::{Harmful, Right, Wrong};
    let only = |oil, grease, dry, why: &str| Some(Form { oil, grease, dry, scores: None, why: why.to_owned() });
    match facts.fitting {
        Fitting::FeedsOil => {
            return only(Right, Harmful, Wrong, "the fitting feeds oil; grease pressed into it blocks the way for good");
        }
        Fitting::CarriesOil => {
            return only(Right, Wrong, Wrong, "the bath, splash or pump carries oil; grease would not be carried");
        }
        Fitting::FeedsGrease => {
            return only(Wrong, Right, Wrong, "the fitting feeds grease; confirm that it is no oil nipple, as old lathes have them");
        }
        Fitting::Open => {}
    }
    if facts.grit && !facts.flushed && facts.reach == Reach::Easy && !facts.coolant {
        let why = "abrasive dust reaches it: oil and grease hold the dust and make a lapping paste, a dry film does not";
        return only(Wrong, Harmful, Right, why);
    }
    if facts.hottest > Temperature::new::<degree_celsius>(HOTTEST_C) {
        return only(Wrong, Wrong, Right, "above 150 °C oils and greases burn off");
    }
    if facts.speed_factor.is_some_and(|factor| factor > GREASE_SPEED_LIMIT) {
        return only(Right, Wrong, Wrong, "too fast for grease: it is thrown off and heats");
    }
    None
}

fn scored(facts: &Facts) -> Form {
    /// One fact against a form is a drawback, a grave one rules it out.
    const STILL_SERVES: i32 = -2;
    let mut scores = [0_i32; 3];
    let mut reasons = Vec::new();
    for row in TABLE.iter().filter(|row| (row.holds)(facts)) {
        for (sum, points) in scores.iter_mut().zip(row.points) {
            *sum += points;
        }
        let [oil, grease, dry] = row.points;
        reasons.push(format!("{} ({oil:+}/{grease:+}/{dry:+})", row.fact));
    }
    let [oil, grease, dry] = scores;
    let best = oil.max(grease).max(dry);
    let oil_wins = oil >= best - 1;
    let standing = |own: i32, wins: bool| {
        if wins {
            Standing::Right
        } else if own >= STILL_SERVES {
            Standing::WillDo
        } else {
            Standing::Wrong
        }
    };
    Form {
        oil: standing(oil, oil_wins),
        grease: standing(grease, !oil_wins && grease == best),
        dry: standing(dry, !oil_wins && grease < best && dry == best),
        scores: Some(scores),
        why: format!("oil {oil}, grease {grease}, dry {dry}: {}", reasons.join(", ")),
    }
}
