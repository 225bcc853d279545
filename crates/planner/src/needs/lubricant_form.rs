//! Oil, grease or dry: the facts of a point, for the trade's gates and scores ([`formulas::lubricant_form`]) to judge.
//!
//! A lubricant that runs carries chips away and cools; one that stays reaches where a can does not; one that dries holds no grit.

use std::borrow::Cow;

pub use formulas::lubricant_form::Clearance;
use formulas::lubricant_form::{Facts, Fitting as Feeds, Reach as Reached, Standing, form};
use shop::{Exposure, Fitting, Point, Reach, Room};
use units::{Quantity, Temperature, Velocity};

use crate::demand::{Demand, Test};
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
    let (demand, by_gate) = asked(point, room, nature);
    match own {
        Some(own) if own.above_gates || !by_gate => own.demand,
        _ => demand,
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

/// What a place wants by the trade's gates and scores, and whether a gate decided.
fn asked(point: &Point, room: &Room, nature: &Nature) -> (Demand, bool) {
    let facts = Facts {
        fitting: match point.fitting {
            Fitting::BallOiler | Fitting::OilCup | Fitting::OilHole | Fitting::Wick | Fitting::Drip => Feeds::FeedsOil,
            Fitting::Bath | Fitting::Splash | Fitting::Pump => Feeds::CarriesOil,
            Fitting::GreaseNipple | Fitting::Cap | Fitting::Packed => Feeds::FeedsGrease,
            Fitting::Brush | Fitting::Sealed => Feeds::Open,
        },
        reach: match point.reach {
            Reach::Easy => Reached::Easy,
            Reach::Hard => Reached::Hard,
        },
        chips: point.meets(Exposure::Chips),
        grit: point.meets(Exposure::Grit) && !nature.enclosed,
        flushed: false,
        coolant: point.meets(Exposure::Coolant),
        outdoors: point.meets(Exposure::Outdoors),
        clearance: nature.clearance,
        speed: nature.speed,
        speed_factor: nature.speed_factor,
        heavy: nature.heavy,
        leaks: nature.leaks,
        coldest: room.coldest,
        hottest: Temperature::from_base(room.hottest.base() + nature.rise),
        unsure: false,
    };
    let form = form(&facts);
    let grade = |standing| match standing {
        Standing::Right => Grade::Right,
        Standing::WillDo => Grade::WillDo,
        Standing::Wrong => Grade::Wrong,
        Standing::Harmful => Grade::Harmful,
    };
    let test = Test::Form { oil: grade(form.oil), grease: grade(form.grease), dry: grade(form.dry) };
    let by_gate = form.scores.is_none();
    (Demand { what: "oil, grease or dry", test, why: form.why.into(), source: "common-practice" }, by_gate)
}
