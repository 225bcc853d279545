//! Grease: whether a place wants it at all, how stiff, on what oil, and whether two greases may meet.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::grease::{Bearing, Nlgi, Place, base_oil_viscosity, consistency, fill};
use formulas::lubricant_form::{Clearance, Facts, Fitting, Reach, Standing, TABLE, form};
use formulas::rolling_bearing::{mean_diameter, speed_factor};
use reference::{Compatibility, Fluid};
use units::{AngularVelocity, Length, Mass, Temperature, Velocity};

use super::bearing::DRAGS;
use super::common::{Judged, Oil, choose, degrees, fluid, mm2, said};
use super::{Asked, Outcome, Unanswered};

const FITTING: Given<&'static str> = Given::choice(
    "fitting",
    &["none", "oiler", "bath", "nipple"],
    "none",
    "common-practice",
    "how it is fed: nothing or a brush; a ball oiler, cup, hole or wick; a bath or pump; a grease nipple or screw-down cap",
);
const REACH: Given<&'static str> = Given::choice(
    "reach",
    &["easy", "fair", "hard"],
    "fair",
    "common-practice",
    "how it is reached: in the open, with some trouble, or with a guard off",
);
const EXPOSED: Given<Vec<String>> =
    Given::choices("exposed", &["nothing", "chips", "grit", "coolant", "outdoors"], "nothing", "common-practice", "what comes to it");
const CLEARANCE: Given<&'static str> =
    Given::choice("made_for", &["oil", "grease", "either"], "either", "common-practice", "what its clearance was designed for");
const HEAVY: Given<bool> = Given::flag("heavy", "no", "common-practice", "whether it runs slow, heavily loaded or with shocks");
const LEAKS: Given<bool> = Given::flag("leaks", "no", "common-practice", "whether oil runs off or out of it");
const SLIDING: Given<Velocity> = Given::quantity("sliding", "0.1 m/s", "common-practice", "speed at which its faces slide");
const COLDEST: Given<Temperature> = Given::quantity("coldest", "10 °C", "common-practice", "coldest start");
const RUNNING: Given<Temperature> = Given::quantity("running", "45 °C", "common-practice", "steady temperature in running");
const PUMPED: Given<bool> = Given::flag("pumped", "no", "common-practice", "whether it comes by a central pump and lines");
const UPRIGHT: Given<bool> = Given::flag("upright", "no", "common-practice", "whether it is a large bearing on an upright shaft");
const LEAKY_BOX: Given<bool> = Given::flag("leaky_box", "no", "common-practice", "whether it is a gearbox without good seals");
const BORE: Given<Option<Length>> = Given::maybe("bore", "bore of a rolling bearing; with `outside` and `speed` its base oil is found");
const OUTSIDE: Given<Option<Length>> = Given::maybe("outside", "outside diameter of the bearing");
const SPEED: Given<Option<AngularVelocity>> = Given::maybe("speed", "speed of the bearing");
const WIDTH: Given<Option<Length>> = Given::maybe("width", "width of the bearing; with `mass` its first fill is found");
const MASS: Given<Option<Mass>> = Given::maybe("mass", "what the bearing weighs");
const OLD: Given<Vec<String>> = Given::fluids("old", "grease that is in it now, by key");
const NEW: Given<Vec<String>> = Given::fluids("new", "grease you would add, by key");

pub(super) static KIND: Kind = Kind {
    name: "grease",
    about: "whether a place wants oil, grease or a dry film, how stiff a grease, and whether two greases may meet",
    fields: &[
        FITTING.field(),
        REACH.field(),
        EXPOSED.field(),
        CLEARANCE.field(),
        HEAVY.field(),
        LEAKS.field(),
        SLIDING.field(),
        COLDEST.field(),
        RUNNING.field(),
        PUMPED.field(),
        UPRIGHT.field(),
        LEAKY_BOX.field(),
        BORE.field(),
        OUTSIDE.field(),
        SPEED.field(),
        WIDTH.field(),
        MASS.field(),
        OLD.field(),
        NEW.field(),
    ],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let (mut outcome, wanted) = scores(asked, r)?;
    outcome = meeting(asked, outcome)?;
    let answers = asked.answers;
    let place = Place {
        coldest: answers.quantity(&COLDEST),
        running: answers.quantity(&RUNNING),
        pumped: answers.flag(&PUMPED),
        leaky_box: answers.flag(&LEAKY_BOX),
        large_upright: answers.flag(&UPRIGHT),
    };
    if place.coldest > place.running {
        return Err(Unanswered::Contradiction(
            "it starts warmer than it runs: exchange `coldest` and `running`, or mend the wrong one".to_owned(),
        ));
    }
    let (number, why) = consistency(&place);
    let (low, high) = number.penetration();
    if wanted {
        outcome = outcome.way(format!("grease of NLGI {}", number.name()), true, why).numbers(
            "worked penetration of the grease",
            "× 0.1 mm",
            units::Range { low, likely: f64::midpoint(low, high), high },
        );
    }
    let base = base(asked, &mut outcome, r)?;
    let choices = if wanted { choose(asked.reference, |fluid| judge(fluid, number, &place, base)) } else { Vec::new() };
    Ok(outcome
        .choices(choices)
        .caution("No grease into an oiler, cup, wick or oil hole: it blocks the way for good.", "common-practice")
        .caution("On old lathes a nipple may be meant for an oil gun: ask the manual before you press grease in.", "common-practice"))
}

/// Oil, grease or dry film, with the rules that made the score; and whether grease serves.
fn scores(asked: &Asked<'_>, r: &mut Notebook) -> Result<(Outcome, bool), Unanswered> {
    let answers = asked.answers;
    let exposed = |word: &str| answers.words(&EXPOSED).iter().any(|said| said == word);
    if exposed("nothing") && answers.words(&EXPOSED).len() > 1 {
        return Err(Unanswered::Contradiction("`exposed` says nothing and something: leave `nothing` out".to_owned()));
    }
    let speed_factor = match (answers.maybe(&BORE), answers.maybe(&OUTSIDE), answers.maybe(&SPEED)) {
        (Some(bore), Some(outside), Some(speed)) => Some(speed_factor(r, speed, mean_diameter(bore, outside))),
        _ => None,
    };
    let facts = Facts {
        fitting: match answers.word(&FITTING) {
            "oiler" => Fitting::FeedsOil,
            "bath" => Fitting::CarriesOil,
            "nipple" => Fitting::FeedsGrease,
            _ => Fitting::Open,
        },
        reach: match answers.word(&REACH) {
            "easy" => Reach::Easy,
            "hard" => Reach::Hard,
            _ => Reach::Fair,
        },
        chips: exposed("chips"),
        grit: exposed("grit"),
        coolant: exposed("coolant"),
        outdoors: exposed("outdoors"),
        clearance: match answers.word(&CLEARANCE) {
            "oil" => Clearance::Oil,
            "grease" => Clearance::Grease,
            _ => Clearance::Open,
        },
        speed: answers.quantity(&SLIDING),
        speed_factor,
        heavy: answers.flag(&HEAVY),
        leaks: answers.flag(&LEAKS),
        coldest: answers.quantity(&COLDEST),
        hottest: answers.quantity(&RUNNING),
        ..Facts::default()
    };
    let found = form(&facts);
    let say = |standing: Standing| match standing {
        Standing::Right => "right",
        Standing::WillDo => "will do",
        Standing::Wrong => "wrong",
        Standing::Harmful => "harmful",
    };
    let mut outcome = Outcome::default();
    let rows = [("oil", found.oil), ("grease", found.grease), ("a dry film", found.dry)];
    for (place, (name, standing)) in rows.into_iter().enumerate() {
        let why = match found.scores.map(|scores| scores[place]) {
            Some(score) => format!("{}, {score} points", say(standing)),
            None => format!("{}: {}", say(standing), found.why),
        };
        outcome = outcome.way(name, matches!(standing, Standing::Right | Standing::WillDo), why);
    }
    let wanted = matches!(found.grease, Standing::Right | Standing::WillDo);
    let Some(_) = found.scores else { return Ok((outcome, wanted)) };
    for row in TABLE.iter().filter(|row| found.why.contains(&format!("{} (", row.fact))) {
        let [oil, grease, dry] = row.points;
        outcome = outcome.caution(format!("Counted: {}: oil {oil:+}, grease {grease:+}, dry film {dry:+}.", row.fact), "common-practice");
    }
    Ok((outcome.caution("Level within one point: take oil, and renew it often.", "common-practice"), wanted))
}

/// Whether two greases may meet.
fn meeting(asked: &Asked<'_>, outcome: Outcome) -> Result<Outcome, Unanswered> {
    let (old, new) = match (fluid(asked, &OLD)?, fluid(asked, &NEW)?) {
        (None, None) => return Ok(outcome),
        (Some(old), Some(new)) => (old, new),
        _ => {
            return Err(Unanswered::Contradiction(
                "whether two greases may meet takes both `old` and `new`: give the other too".to_owned(),
            ));
        }
    };
    let (Some(one), Some(other)) = (&old.grease, &new.grease) else {
        return Err(Unanswered::Contradiction("`old` and `new` are greases here; for oils ask `bench switch`".to_owned()));
    };
    let name = |key: &str| asked.reference.thickeners.get(key).map_or_else(|| key.to_owned(), |thickener| thickener.name.clone());
    let pair = format!("{} and {}", name(&one.thickener), name(&other.thickener));
    let (fits, why) = match asked.reference.compatibility(&one.thickener, &other.thickener) {
        Compatibility::Compatible if one.thickener == other.thickener => {
            (true, format!("both are thickened with {}", name(&one.thickener)))
        }
        Compatibility::Compatible => (true, format!("{pair} may meet")),
        Compatibility::Borderline => (false, format!("the charts disagree on {pair}: pump the new one in until it comes out clean")),
        Compatibility::Incompatible => (false, format!("{pair} must not meet: take the bearing apart and wash the old one out")),
    };
    Ok(outcome
        .way("letting the two meet", fits, why)
        .caution("Published charts of which greases may meet disagree with one another: in doubt clean the old one out.", "usbr-fist-2-4"))
}

/// Viscosity at running temperature the base oil should have, where a bearing is described; and the first fill.
fn base(asked: &Asked<'_>, outcome: &mut Outcome, r: &mut Notebook) -> Result<Option<(f64, f64)>, Unanswered> {
    /// Density of a grease, g/cm³; *typical, from memory*.
    const GREASE: f64 = 0.9;
    let answers = asked.answers;
    let given = [answers.maybe(&BORE).is_some(), answers.maybe(&OUTSIDE).is_some(), answers.maybe(&SPEED).is_some()];
    let (Some(bore), Some(outside), Some(speed)) = (answers.maybe(&BORE), answers.maybe(&OUTSIDE), answers.maybe(&SPEED)) else {
        return if given.contains(&true) {
            Err(Unanswered::Contradiction("a bearing takes `bore`, `outside` and `speed`: give all three, or none".to_owned()))
        } else {
            Ok(None)
        };
    };
    if bore >= outside {
        return Err(Unanswered::Contradiction(
            "the bore is not smaller than the outside diameter: exchange `bore` and `outside`".to_owned(),
        ));
    }
    if answers.maybe(&WIDTH).is_some() != answers.maybe(&MASS).is_some() {
        return Err(Unanswered::Contradiction("the first fill takes both `width` and `mass`: give both, or neither".to_owned()));
    }
    let range = base_oil_viscosity(r, speed, mean_diameter(bore, outside))?;
    let mut done = std::mem::take(outcome).range(format!("viscosity of its base oil at {}", degrees(answers.quantity(&RUNNING))), range);
    if let (Some(width), Some(mass)) = (answers.maybe(&WIDTH), answers.maybe(&MASS)) {
        let fill = fill(r, &Bearing { bore, outside, width, mass }, GREASE, false)?;
        done = done.exact("free space inside", fill.free).exact("first fill", fill.volume).exact("the same on the scales", fill.mass);
    }
    *outcome = done;
    Ok(Some((mm2(range.low), mm2(range.high))))
}

fn judge(fluid: &Fluid, number: Nlgi, place: &Place, base: Option<(f64, f64)>) -> Option<Judged> {
    const EASE: f64 = 0.65;
    let grease = fluid.grease.as_ref().filter(|_| fluid.classes.first().is_some_and(|class| class != "anti-seize"))?;
    // The data count 00 as −1 and 000 as −2, the NLGI's list begins there.
    let own = usize::try_from(i32::from(grease.consistency) + 2).ok().and_then(|place| Nlgi::ALL.get(place).copied());
    let name = own.map_or("?", Nlgi::name);
    let miss = |why: String| Some(Judged { fits: false, off: 1.0, why });
    if place.running > grease.hottest {
        return miss(format!("NLGI {name}, but good to {} only", degrees(grease.hottest)));
    }
    if place.coldest < grease.coldest {
        return miss(format!("NLGI {name}, but stiff below {}", degrees(grease.coldest)));
    }
    if own != Some(number) {
        return miss(format!("NLGI {name}, not {}", number.name()));
    }
    let span = format!("as stiff as it should be, good from {} to {}", degrees(grease.coldest), degrees(grease.hottest));
    let Some((low, high)) = base else { return Some(Judged { fits: true, off: 0.0, why: span }) };
    let nu = Oil::of(fluid)?.silent(place.running)?;
    let why = format!("its oil has {} mm²/s at {}", said(nu), degrees(place.running));
    // More than is asked does no harm for a while, as on the sheet of bearings.
    let fits = (low..=DRAGS * low).contains(&nu);
    // Anywhere near the middle is as good; then what every shop has comes first.
    let off = ((nu / (low * high).sqrt()).ln().abs() - EASE).max(0.0);
    Some(Judged {
        fits,
        off,
        why: if fits {
            why
        } else if nu < low {
            format!("{why}: too thin")
        } else {
            format!("{why}: it would drag")
        },
    })
}
