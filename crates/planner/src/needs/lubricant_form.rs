//! Oil, grease or dry: gates first, then a score for each fact of the place.
//!
//! A lubricant that runs carries chips away and cools; one that stays reaches where a can does not; one that dries holds no grit.
//! Each fact adds to each form what *common practice* gives it; the highest wins and within one point oil does, renewed often.

use std::borrow::Cow;

use shop::{Exposure, Fitting, Point, Reach, Room};
use units::{Quantity, Velocity};

use crate::demand::{Demand, Test, celsius};
use crate::verdict::Grade;

/// What the kind of a point knows of its nature.
#[derive(Debug, Clone, Copy)]
pub struct Nature {
    /// How its clearance was designed.
    pub clearance: Clearance,
    /// Rubbing or rolling speed.
    pub speed: Velocity,
    /// Slow, heavy or shocked.
    pub heavy: bool,
    /// Lubricant runs off it.
    pub leaks: bool,
    /// Mean diameter × speed of a rolling bearing, mm·rev/min.
    pub speed_factor: Option<f64>,
    /// Steady temperature above the room's, K.
    pub rise: f64,
    /// Shut in: dust round about does not get between its faces.
    pub enclosed: bool,
}

/// What lubricant the clearance of a place was designed for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Clearance {
    /// Close, without a groove: oil.
    Oil,
    /// Looser, with a groove or a seal: grease.
    Grease,
    /// Neither in particular.
    Open,
}

impl Default for Nature {
    fn default() -> Self {
        Self {
            clearance: Clearance::Open,
            speed: Velocity::from_base(0.0),
            heavy: false,
            leaks: false,
            speed_factor: None,
            rise: 0.0,
            enclosed: false,
        }
    }
}

/// Above this no grease stays in a rolling bearing, mm·rev/min; *common practice*, near the 300–350 thousand of the handbooks.
const GREASE_SPEED_LIMIT: f64 = 300_000.0;

/// What a kind says itself, where the trade settles the form and the scores would not find it.
#[derive(Debug, Clone)]
pub(crate) struct OwnForm {
    /// What it says.
    pub demand: Demand,
    /// Whether it stands above the gates too, as with a lock whose hole is no oil hole.
    pub above_gates: bool,
}

/// The demand for oil, grease or dry film at a point.
pub(crate) fn demand(point: &Point, room: &Room, nature: &Nature, own: Option<OwnForm>) -> Demand {
    match own {
        Some(own) if own.above_gates => own.demand,
        Some(own) => gate(point, room, nature).unwrap_or(own.demand),
        None => gate(point, room, nature).unwrap_or_else(|| scored(point, room, nature)),
    }
}

/// Lets the dry films in where the place asks for them and the kind, written with oil in mind, names none; and leaves nothing but them
/// where neither oil nor grease serves, pastes neither.
pub(crate) fn admit_dry(demands: &mut Vec<Demand>) {
    const FILMS: [&str; 3] = ["ptfe-film", "moly-film", "dry-graphite"];
    const WAX: &str = "paste-wax";
    let is_dry = |word: &Cow<'static, str>| word == WAX || FILMS.contains(&word.as_ref());
    let alone = demands.iter().find_map(|demand| match demand.test {
        Test::Form { oil, grease, dry: Grade::Right } => Some(!oil.serves() && !grease.serves()),
        _ => None,
    });
    let Some(alone) = alone else { return };
    // Additives are asked of what runs or stays; a film of solids needs none.
    demands.retain(|demand| !matches!(demand.test, Test::With { .. }));
    for demand in demands {
        let Test::Class { right, will_do } = &mut demand.test else { continue };
        if alone {
            right.retain(is_dry);
            will_do.retain(is_dry);
        }
        if !right.iter().any(is_dry) {
            right.extend(FILMS.map(Cow::Borrowed));
            will_do.push(Cow::Borrowed(WAX));
        }
    }
}

fn gate(point: &Point, room: &Room, nature: &Nature) -> Option<Demand> {
    use Grade::{Harmful, Right, Wrong};
    let only = |oil, grease, dry, why: &'static str| {
        Some(Demand { what: "oil, grease or dry", test: Test::Form { oil, grease, dry }, why: why.into(), source: "common-practice" })
    };
    match point.fitting {
        Fitting::BallOiler | Fitting::OilCup | Fitting::OilHole | Fitting::Wick | Fitting::Drip => {
            return only(Right, Harmful, Wrong, "the fitting feeds oil; grease pressed into it blocks the way for good");
        }
        Fitting::Bath | Fitting::Splash | Fitting::Pump => {
            return only(Right, Wrong, Wrong, "the bath, splash or pump carries oil; grease would not be carried");
        }
        Fitting::GreaseNipple | Fitting::Cap => {
            return only(Wrong, Right, Wrong, "the fitting feeds grease; confirm that it is no oil nipple, as old lathes have them");
        }
        Fitting::Brush | Fitting::Sealed => {}
    }
    if point.meets(Exposure::Grit) && !nature.enclosed && point.reach == Reach::Easy && !point.meets(Exposure::Coolant) {
        return only(
            Wrong,
            Harmful,
            Right,
            "abrasive dust reaches it: oil and grease hold the dust and make a lapping paste, a dry film does not",
        );
    }
    if room.hottest.base() + nature.rise > celsius(150.0).base() {
        return only(Wrong, Wrong, Right, "above 150 °C oils and greases burn off");
    }
    if nature.speed_factor.is_some_and(|factor| factor > GREASE_SPEED_LIMIT) {
        return only(Right, Wrong, Wrong, "too fast for grease: it is thrown off and heats");
    }
    None
}

fn scored(point: &Point, room: &Room, nature: &Nature) -> Demand {
    const FAST_M_PER_S: f64 = 2.0;
    /// One fact against a form is a drawback, a grave one rules it out.
    const STILL_SERVES: i32 = -2;
    let mut score = [0_i32; 3];
    let mut reasons = Vec::new();
    let mut add = |holds: bool, points: [i32; 3], reason: &str| {
        if holds {
            for (sum, point) in score.iter_mut().zip(points) {
                *sum += point;
            }
            reasons.push(format!("{reason} ({:+}/{:+}/{:+})", points[0], points[1], points[2]));
        }
    };
    add(point.reach == Reach::Hard, [0, 3, 1], "hard to reach");
    add(point.reach == Reach::Easy, [2, 0, 0], "open and easy to reach");
    add(point.meets(Exposure::Chips), [2, -2, 1], "chips reach it");
    add(point.meets(Exposure::Grit) && !nature.enclosed, [-1, -3, 4], "abrasive dust reaches it");
    add(point.meets(Exposure::Coolant), [-1, 2, -2], "coolant washes it");
    add(nature.clearance == Clearance::Oil, [3, -3, 0], "close clearance without groove");
    add(nature.clearance == Clearance::Grease, [-1, 3, 0], "made for grease");
    add(nature.speed.base() > FAST_M_PER_S, [4, -4, -3], "fast");
    add(nature.heavy, [1, 2, 0], "slow, heavy or shocked");
    add(nature.leaks, [-1, 2, 1], "runs off");
    add(room.coldest < celsius(5.0), [0, -2, 1], "cold starts");
    add(point.meets(Exposure::Outdoors), [-1, 2, 0], "stands outdoors");
    let [oil, grease, dry] = score;
    let best = oil.max(grease).max(dry);
    let oil_wins = oil >= best - 1;
    let grade = |own: i32, wins: bool| {
        if wins {
            Grade::Right
        } else if own >= STILL_SERVES {
            Grade::WillDo
        } else {
            Grade::Wrong
        }
    };
    let test = Test::Form {
        oil: grade(oil, oil_wins),
        grease: grade(grease, !oil_wins && grease == best),
        dry: grade(dry, !oil_wins && grease < best && dry == best),
    };
    let why = format!("oil {oil}, grease {grease}, dry {dry}: {}", reasons.join(", "));
    Demand { what: "oil, grease or dry", test, why: why.into(), source: "common-practice" }
}
