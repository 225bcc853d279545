//! What every lubrication point asks besides what its kind computes: form, fitting, chemistry, the maker's word, cold starts, intervals.

use std::borrow::Cow;

use formulas::slideway::slide_viscosity;
use formulas::sources::ISO_3448;
use formulas::working::Recorder;
use formulas::{given, step};
use reference::{Form, Reference};
use shop::{Answers, Exposure, Fitting, Machine, Point, Reach, Room};
use units::{AngularVelocity, KinematicViscosity, Length, Pressure, Quantity, Range, System, Temperature, Velocity, show};

use super::interval::{Interval, every};
use super::maker::{against, overrule};
use crate::demand::{Demand, GRADE_BAND, Test, celsius};
use crate::need::{Consequence, Dose, How, Need, Place, Ration};
use crate::needs::lubricant_form::{self, Nature, OwnForm};
use crate::needs::prohibitions::{self, Character};
use crate::needs::{id, weight};
use crate::verdict::Grade;

/// One grade of ISO 3448 is about one and a half times the next; a fluid one grade off will do.
pub(super) const ONE_GRADE: f64 = 1.5;

/// What a slide asks of its oil, from the thin end of the thinnest grade: limits that the trade gives in grades are meant no finer than a
/// grade.
pub(super) fn slide_window<R: Recorder>(r: &mut R, pressure: Pressure, speed: Option<Velocity>) -> Range<KinematicViscosity> {
    let window = slide_viscosity(r, pressure, speed);
    given!(r, nu_low["mm²/s"] = window.low.base() * 1e6, "the thinnest grade");
    given!(r, b [] = GRADE_BAND, "how far an oil lies from its grade");
    step!(r, nu_right["mm²/s"] = nu_low / b, ISO_3448);
    Range { low: mm2_per_s(nu_right), ..window }
}

/// Grease weighs about this much, g/mL; *common practice*.
pub(super) const GREASE_G_PER_ML: f64 = 0.9;

/// A kinematic viscosity in mm²/s.
pub(super) fn mm2_per_s(number: f64) -> KinematicViscosity {
    KinematicViscosity::from_base(number * 1e-6)
}

/// A length in micrometres.
pub(super) fn micrometres(number: f64) -> Length {
    Length::from_base(number * 1e-6)
}

/// The speed of a round thing's rim.
pub(super) fn rim_speed(diameter: Length, speed: AngularVelocity) -> Velocity {
    Velocity::from_base(0.5 * diameter.base() * speed.base())
}

/// The point, and all it stands in.
pub(crate) struct Spot<'a> {
    pub room: &'a Room,
    pub machine: &'a Machine,
    pub point: &'a Point,
    pub reference: &'a Reference,
    /// The units that sentences about it are told in.
    pub units: System,
}

impl Spot<'_> {
    /// What is said or supposed about the point.
    pub fn answers(&self) -> &Answers {
        &self.point.answers
    }

    /// Whether it is shut in where neither chips nor a can reach it.
    pub fn guarded(&self) -> bool {
        self.point.reach == Reach::Hard && ![Exposure::Chips, Exposure::Grit].iter().any(|exposure| self.point.meets(*exposure))
    }

    /// Its fitting, or the one its kind has when no other is named.
    pub fn fitting_or(&self, usual: Fitting) -> Fitting {
        if self.point.fitting == Fitting::Brush { usual } else { self.point.fitting }
    }

    /// The hottest the point gets, so many kelvin above the room.
    pub fn hottest(&self, rise: f64) -> Temperature {
        raised(self.room.hottest, rise)
    }

    /// What the point has on a usual day.
    pub fn usual(&self, rise: f64) -> Temperature {
        raised(self.room.usual, rise)
    }
}

fn raised(room: Temperature, rise: f64) -> Temperature {
    Temperature::from_base(room.base() + rise)
}

/// What the file of a kind says about a point of its kind.
pub(crate) struct Asking {
    consequence: Consequence,
    nature: Nature,
    character: Character,
    demands: Vec<Demand>,
    doses: Vec<(Form, Dose)>,
    interval: Interval,
    mind: Vec<(Cow<'static, str>, &'static str)>,
    nothing: Option<Cow<'static, str>>,
    fitting: Option<Fitting>,
    form: Option<OwnForm>,
    how: Option<&'static str>,
}

impl Asking {
    /// A point whose neglect has this consequence.
    pub fn new(consequence: Consequence, interval: Interval) -> Self {
        Self {
            consequence,
            nature: Nature::default(),
            character: Character::default(),
            demands: Vec::new(),
            doses: Vec::new(),
            interval,
            mind: Vec::new(),
            nothing: None,
            fitting: None,
            form: None,
            how: None,
        }
    }

    /// Nothing is to be put there.
    pub fn nothing(why: &'static str) -> Self {
        Self { nothing: Some(why.into()), ..Self::new(Consequence::Looks, Interval::calendar(365.0)) }
    }

    /// What decides between oil, grease and dry.
    pub fn nature(mut self, nature: Nature) -> Self {
        self.nature = nature;
        self
    }

    /// What the prohibitions look at.
    pub fn character(mut self, character: Character) -> Self {
        self.character = character;
        self
    }

    /// How it is put there, where its fitting does not say.
    pub fn put(mut self, how: &'static str) -> Self {
        self.how = Some(how);
        self
    }

    /// The fitting such a point has when no other is named.
    pub fn fitted(mut self, fitting: Fitting) -> Self {
        self.fitting = Some(fitting);
        self
    }

    /// What the trade says of oil, grease and dry film here; a fitting, dust or great heat still decides first.
    pub fn form(mut self, oil: Grade, grease: Grade, dry: Grade, why: &'static str) -> Self {
        let test = Test::Form { oil, grease, dry };
        let demand = Demand { what: "oil, grease or dry", test, why: why.into(), source: "common-practice" };
        self.form = Some(OwnForm { demand, above_gates: false });
        self
    }

    /// As [`form`](Self::form), and nothing decides before it.
    pub fn form_above_all(self, oil: Grade, grease: Grade, dry: Grade, why: &'static str) -> Self {
        let mut asking = self.form(oil, grease, dry, why);
        if let Some(form) = &mut asking.form {
            form.above_gates = true;
        }
        asking
    }

    /// A demand.
    pub fn demand(mut self, what: &'static str, test: Test, why: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        self.demands.push(Demand { what, test, why: why.into(), source });
        self
    }

    /// A demand that only some points of the kind make.
    pub fn demand_if(self, made: bool, what: &'static str, test: Test, why: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        if made { self.demand(what, test, why, source) } else { self }
    }

    /// Classes of fluid.
    pub fn classes(
        self,
        right: &[&'static str],
        will_do: &[&'static str],
        why: impl Into<Cow<'static, str>>,
        source: &'static str,
    ) -> Self {
        let words = |words: &[&'static str]| words.iter().map(|word| Cow::Borrowed(*word)).collect();
        self.demand("kind of fluid", Test::Class { right: words(right), will_do: words(will_do) }, why, source)
    }

    /// Viscosity between two values; one grade outside will do.
    ///
    /// The thin end is judged when the point is hottest, the thick end on a usual day: a cold start is a matter of feed and flow.
    pub fn viscosity(
        self,
        spot: &Spot<'_>,
        low: KinematicViscosity,
        high: KinematicViscosity,
        why: impl Into<Cow<'static, str>>,
        source: &'static str,
    ) -> Self {
        let why = why.into();
        let rise = self.nature.rise;
        self.demand(
            "thick enough when hot",
            Test::NotThinner { at: spot.hottest(rise), right: low, will_do: low / ONE_GRADE, else_grade: Grade::Wrong },
            why.clone(),
            source,
        )
        .demand(
            "thin enough when usual",
            Test::NotThicker { at: spot.usual(rise), right: high, will_do: high * ONE_GRADE, else_grade: Grade::Wrong },
            why,
            source,
        )
    }

    /// Viscosity from a value up when hottest; for places that a grease serves too, whose base oil may be as thick as it likes.
    pub fn thick_enough(self, spot: &Spot<'_>, low: KinematicViscosity, why: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        let at = spot.hottest(self.nature.rise);
        let test = Test::NotThinner { at, right: low, will_do: low / ONE_GRADE, else_grade: Grade::Wrong };
        self.demand("thick enough when hot", test, why, source)
    }

    /// Stiffness of grease, one step softer where the machine starts cold.
    pub fn stiffness(self, spot: &Spot<'_>, softest: i8, stiffest: i8) -> Self {
        const COLD_C: f64 = 5.0;
        let softest = if spot.room.coldest < celsius(COLD_C) { softest - 1 } else { softest };
        self.demand(
            "stiffness of the grease",
            Test::Consistency { softest, stiffest },
            format!(
                "softer grease runs out, stiffer grease does not reach the faces; below {} one step softer serves",
                show(celsius(COLD_C), spot.units)
            ),
            "astm-d217",
        )
    }

    /// A dose of a form of fluid.
    pub fn dose(mut self, form: Form, dose: Dose) -> Self {
        self.doses.push((form, dose));
        self
    }

    /// Something to mind there.
    pub fn mind(mut self, text: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        self.mind.push((text.into(), source));
        self
    }
}

/// Adds what every point asks and works out weight and interval.
pub(super) fn finish(spot: &Spot<'_>, mut asking: Asking, working: Option<formulas::working::Notebook>) -> Need {
    let point = match asking.fitting {
        Some(fitting) if spot.point.fitting == Fitting::Brush => &Point { fitting, ..spot.point.clone() },
        _ => spot.point,
    };
    let sessions = weight::sessions_a_year(point.hours.hours_per_year());
    let sealed = point.fitting == Fitting::Sealed;
    let nothing = asking.nothing.or_else(|| sealed.then_some("sealed for life: renew the part when it runs rough".into()));
    let mut demands = Vec::new();
    if nothing.is_none() {
        demands.extend(asking.demands);
        demands.insert(0, lubricant_form::demand(point, spot.room, &asking.nature, asking.form));
        lubricant_form::admit_dry(&mut demands);
        if let Some(maker) = &point.maker {
            asking.mind.extend(against(&demands, maker, spot.reference));
            overrule(&mut demands, maker, spot.reference);
        }
        if !asking.character.warmed {
            demands.push(cold_start(point.fitting, spot.room.coldest, asking.character));
        }
        demands.push(Demand {
            what: "stands the heat and the cold",
            test: Test::Stands { hottest: spot.hottest(asking.nature.rise) },
            why: "a lubricant past its limit melts, cokes or dries".into(),
            source: "common-practice",
        });
        demands.extend(may_meet(point, spot.reference));
        demands.extend(prohibitions::demands(point, asking.character));
        if !point.touches.is_empty() {
            demands.push(Demand {
                what: "safe on what it touches",
                test: Test::Spares { materials: point.touches.clone(), stays: true },
                why: "it stays on these materials".into(),
                source: "common-practice",
            });
        }
    }
    let mute = nothing.is_some();
    let doses = with_dry(asking.doses, &demands);
    let rations: Vec<Ration> = doses
        .into_iter()
        .map(|(form, dose)| Ration { form, dose: dose.times(point.count), every: every(point, asking.interval.with(form), form, sessions) })
        .collect();
    let id = id(&[&spot.machine.name, &point.name]);
    Need {
        task: id.clone(),
        share: 1.0,
        id,
        place: Place::Point { machine: spot.machine.name.clone(), point: point.name.clone() },
        kind: point.kind.name,
        weight: weight::weight(asking.consequence, sessions, point.priority, spot.reference),
        demands,
        nothing,
        rations,
        how: asking.how.map_or(How::Fitting(point.fitting), |how| How::Words(how.into())),
        mind: if mute { Vec::new() } else { asking.mind },
        working,
        at: point.at.clone(),
    }
}

/// A dry film is as thick as a film of oil, and may be asked for wherever dust falls on a surface.
fn with_dry(mut doses: Vec<(Form, Dose)>, demands: &[Demand]) -> Vec<(Form, Dose)> {
    let serves = |demand: &Demand| matches!(demand.test, Test::Form { dry, .. } if dry.serves());
    if demands.iter().any(serves)
        && !doses.iter().any(|(form, _)| *form == Form::Dry)
        && let Some((_, oil)) = doses.iter().find(|(form, _)| *form == Form::Oil).copied()
    {
        doses.push((Form::Dry, oil));
    }
    doses
}

/// New grease must suit the grease that is in the place.
fn may_meet(point: &Point, reference: &Reference) -> Option<Demand> {
    let held = reference.fluid(point.holds.as_deref()?)?.grease.as_ref()?;
    Some(Demand {
        what: "may meet what is in it",
        test: Test::Meets { thickener: held.thickener.clone() },
        why: "greases whose thickeners do not suit each other run out or set; then clean it out wholly first".into(),
        source: "usbr-fist-2-4",
    })
}

/// What a feed still passes on a cold start; *common practice, no source*, low confidence.
fn cold_start(fitting: Fitting, coldest: Temperature, character: Character) -> Demand {
    let (limit, feed) = if character.fast_spindle {
        (150.0, "a fast spindle hardly starts")
    } else if character.worm {
        // Boxes of saws stand cold with gear oil of VG 460 in them and turn.
        (15_000.0, "a worm no longer turns in it")
    } else {
        match fitting {
            Fitting::Wick => (500.0, "a wick no longer lifts it"),
            Fitting::Drip => (1000.0, "a drip no longer lets it through"),
            Fitting::Pump => (1500.0, "a hand pump no longer moves it"),
            Fitting::BallOiler | Fitting::OilCup | Fitting::OilHole => (2000.0, "a can no longer presses it in"),
            Fitting::Bath | Fitting::Splash => (2000.0, "a small motor no longer turns in it"),
            _ => (5000.0, "a brush no longer spreads it"),
        }
    };
    Demand {
        what: "flows on a cold start",
        test: Test::Flows { at: coldest, limit: KinematicViscosity::from_base(limit * 1e-6) },
        why: format!("above this {feed}; and it must be 10 K above its pour point").into(),
        source: "common-practice",
    }
}
