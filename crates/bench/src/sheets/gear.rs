//! Gears: what the schools say of their oil, side by side, and which oils answer to it.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::gear::{
    EP_FROM, LEAST_SPEED, Mesh, OpenMedium, force_speed_factor, gear_opinions, open_gear_dose, open_gear_medium, pitch_line_speed,
    tangential_force, worm_grade,
};
use reference::{Fluid, Trait};
use units::{AngularVelocity, Force, KinematicViscosity, Length, Power, Quantity, Temperature, Velocity};

use super::common::{Judged, choose, degrees, from_mm2, in_window, is_one_of, mm2, said};
use super::{Asked, Outcome, Unanswered};

const KIND_OF: Given<&'static str> = Given::choice(
    "kind",
    &["enclosed", "worm", "open"],
    "enclosed",
    "common-practice",
    "spur, helical or bevel gears in a bath; a worm and its bronze wheel; or gears without a bath, such as change gears",
);
const POWER: Given<Power> = Given::quantity("power", "0.55 kW", "common-practice", "power through the gears");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "600 rpm", "common-practice", "speed of the pinion, or of the worm");
const PINION: Given<Length> = Given::quantity("pinion", "50 mm", "common-practice", "reference diameter of the pinion, or of the worm");
const FACE: Given<Length> = Given::quantity("face", "20 mm", "common-practice", "width of the teeth");
const RATIO: Given<f64> = Given::number("ratio", "3", "common-practice", "teeth of the wheel over teeth of the pinion");
const APPLICATION: Given<f64> =
    Given::number("application", "1.25", "common-practice", "application factor: 1 smooth, 1.25 machine tools, 1.75 with shock");
const FORCE: Given<Option<Force>> = Given::maybe("force", "tangential force, in place of the power");
const PITCH_SPEED: Given<Option<Velocity>> = Given::maybe("pitch_speed", "speed of the pitch line, in place of the pinion's");
const AIR: Given<Temperature> = Given::quantity("room", "20 °C", "common-practice", "temperature of the air round the gears");
const CLUTCH: Given<bool> = Given::flag("clutch", "no", "common-practice", "whether a clutch or quick bearings share the bath");
const TEETH: Given<f64> = Given::number("teeth", "100", "common-practice", "teeth of both gears together, for the dose of open gears");
const MODULE: Given<Length> = Given::quantity("module", "1 mm", "common-practice", "module, for the dose of open gears");

pub(super) static KIND: Kind = Kind {
    name: "gear",
    about: "which oil a pair of gears wants, by every school, or what else where oil would not stay",
    fields: &[
        KIND_OF.field(),
        POWER.field(),
        SPEED.field(),
        PINION.field(),
        FACE.field(),
        RATIO.field(),
        APPLICATION.field(),
        FORCE.field(),
        PITCH_SPEED.field(),
        AIR.field(),
        CLUTCH.field(),
        TEETH.field(),
        MODULE.field(),
    ],
};

const CARE: &str = "Stop the machine and lock it off before a brush or a finger goes near gears.";

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let speed: AngularVelocity = answers.quantity(&SPEED);
    let pinion = answers.quantity(&PINION);
    if speed <= AngularVelocity::from_base(0.0) || pinion <= Length::from_base(0.0) {
        return Err(Unanswered::Contradiction("`speed` and `pinion` must be more than nothing".to_owned()));
    }
    for (field, most) in [(&RATIO, 100.0), (&APPLICATION, 5.0), (&TEETH, 2000.0)] {
        if answers.number(field) > most {
            return Err(Unanswered::Contradiction(format!(
                "`{}` is {}: it is {} at most",
                field.field().name,
                said(answers.number(field)),
                said(most)
            )));
        }
    }
    let pitch = match answers.maybe(&PITCH_SPEED) {
        Some(told) if told <= Velocity::from_base(0.0) => {
            return Err(Unanswered::Contradiction("`pitch_speed` must be more than nothing".to_owned()));
        }
        Some(told) => told,
        None => pitch_line_speed(r, pinion, speed),
    };
    let outcome = Outcome::default().exact("speed of the pitch line", pitch).says(format!("{} m/s", said(pitch.base())));
    let slow = pitch.base() < LEAST_SPEED;
    let outcome = match answers.word(&KIND_OF) {
        "worm" => worm(asked, pitch, outcome, r)?,
        "open" => open(asked, pitch, outcome, r)?,
        _ if slow => open(asked, pitch, outcome, r)?
            .caution("So slow a pair carries no oil round: what clings serves it better than a bath does.", "din-51509"),
        _ => enclosed(asked, pitch, outcome, r)?,
    };
    Ok(outcome.caution(CARE, "common-practice"))
}

fn enclosed(asked: &Asked<'_>, pitch: Velocity, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let force = match answers.maybe(&FORCE) {
        Some(told) => told,
        None => tangential_force(r, answers.quantity(&POWER), answers.quantity(&SPEED), answers.quantity(&PINION))?,
    };
    if force <= Force::from_base(0.0) {
        return Err(Unanswered::Contradiction("the gears carry nothing: give a `power` or a `force` above nothing".to_owned()));
    }
    let mesh = Mesh {
        force,
        face: answers.quantity(&FACE),
        pinion: answers.quantity(&PINION),
        ratio: answers.number(&RATIO),
        speed: pitch,
        application: answers.number(&APPLICATION),
    };
    if mesh.ratio < 1.0 {
        return Err(Unanswered::Contradiction("`ratio` is teeth of the wheel over teeth of the pinion: it is 1 or more".to_owned()));
    }
    let factor = force_speed_factor(r, &mesh)?;
    let air = answers.quantity(&AIR);
    let opinions = gear_opinions(r, &mesh, air)?;
    // The two older schools stand as steps of their own; the page shows each beside the table's.
    let step = |symbol: &str| r.steps().filter(|step| step.symbol.text == symbol).map(|step| step.value).last();
    let wants_ep = factor > EP_FROM || answers.number(&APPLICATION) >= SHOCK;
    let outcome = outcome.exact("force on the teeth", force).number("force and speed factor", "MPa·s/m", factor).says(if wants_ep {
        "so loaded and slow that the oil needs EP additives"
    } else {
        "plain or antiwear oil carries this"
    });
    let outcome = [("by load and speed (DIN 51509)", step("ν₁")), ("by speed alone (ASM Handbook 18)", step("ν₂"))]
        .into_iter()
        .filter_map(|(name, nu)| Some((name, from_mm2(nu?))))
        .fold(outcome, |outcome, (name, nu)| outcome.exact(format!("viscosity at 40 °C {name}"), nu));
    let table = opinions.by_speed_and_air;
    let outcome = outcome
        .exact(format!("viscosity at 40 °C by speed and air at {} (AGMA 9005)", degrees(air)), from_mm2(table.grade))
        .says(if table.synthetic { "a synthetic oil; others stiffen in such cold" } else { "the grade's middle" })
        .range("viscosity at 40 °C, all three", opinions.all);
    let mut window = (mm2(opinions.all.low) * (1.0 - GRADE), mm2(opinions.all.high) * (1.0 + GRADE));
    let mut likely = mm2(opinions.all.likely);
    let clutch = answers.flag(&CLUTCH) && likely > CLUTCH_BEARS;
    if clutch {
        // What shares the bath bears no more; of what it bears the thickest is best for the teeth.
        window = (CLUTCH_LEAST, CLUTCH_BEARS);
        likely = CLUTCH_BEARS;
    }
    Ok(outcome
        .choices(bath_oils(asked, window, likely, wants_ep))
        .caution("Your machine's maker comes first: a plate or manual that names an oil beats every formula.", "common-practice")
        .caution_if(
            clutch,
            "A clutch or quick bearings in the same bath bear nothing thicker than VG 68, whatever the teeth ask: load them gently.",
            "common-practice",
        )
        .caution("No GL-5 hypoid oil where there is bronze, unless its label proves that it leaves copper alone.", "astm-d130"))
}

/// What one grade of ISO 3448 lies to either side.
const GRADE: f64 = 0.1;
/// Application factor that counts as shock; *common practice*.
const SHOCK: f64 = 1.5;
/// The thickest a clutch or quick bearings bear, mm²/s at 40 °C; *common practice*.
const CLUTCH_BEARS: f64 = 75.0;
/// The thinnest a geared head is given, mm²/s at 40 °C; *common practice*.
const CLUTCH_LEAST: f64 = 28.8;

fn bath_oils(asked: &Asked<'_>, window: (f64, f64), likely: f64, wants_ep: bool) -> Vec<crate::page::ChoiceRow> {
    const OILS: &[&str] =
        &["gear-oil", "hydraulic-oil", "circulating-oil", "gl4-gear-oil", "gl5-gear-oil", "slideway-oil", "motion-oil", "compressor-oil"];
    let clutch = asked.answers.flag(&CLUTCH);
    choose(asked.reference, |fluid| {
        if !is_one_of(fluid, OILS) || is_one_of(fluid, &["worm-oil"]) {
            return None;
        }
        let nu = mm2(fluid.oil.as_ref()?.viscosity_40);
        let mut judged = in_window(nu, window, "at 40 °C");
        judged.off = (nu / likely).ln().abs() + if is_one_of(fluid, &["slideway-oil", "motion-oil", "compressor-oil"]) { 0.5 } else { 0.0 };
        let flaw = if has(fluid, Trait::HypoidEp) {
            Some("its hypoid additives attack bronze")
        } else if wants_ep && ![Trait::InactiveEp, Trait::Antiwear].iter().any(|wanted| has(fluid, *wanted)) {
            Some("no EP or antiwear additives in it")
        } else if clutch && nu > CLUTCH_BEARS {
            Some("too thick for the clutch and bearings in the bath")
        } else if clutch
            && [Trait::Tackifier, Trait::InactiveEp].iter().any(|wrong| has(fluid, *wrong))
            && !is_one_of(fluid, &["gl4-gear-oil"])
        {
            Some("tack and EP additives make a clutch slip")
        } else {
            None
        };
        Some(match flaw {
            Some(flaw) => Judged { fits: false, why: format!("{}, but {flaw}", judged.why), ..judged },
            None => judged,
        })
    })
}

fn worm(asked: &Asked<'_>, pitch: Velocity, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let air: Temperature = asked.answers.quantity(&AIR);
    let found = worm_grade(r, pitch, air)?;
    let nu: KinematicViscosity = from_mm2(found.grade);
    let choices = choose(asked.reference, |fluid| {
        if !is_one_of(fluid, &["worm-oil", "motion-oil", "steam-cylinder-oil", "gear-oil"]) || is_one_of(fluid, &["gl4-gear-oil"]) {
            return None;
        }
        let thickness = mm2(fluid.oil.as_ref()?.viscosity_40);
        let fatty = has(fluid, Trait::Fatty);
        let near = (thickness / found.grade).ln().abs();
        let fits = fatty && near < 0.9;
        let why = match (fits, fatty) {
            (true, _) => format!("compounded, {} mm²/s at 40 °C", said(thickness)),
            (false, true) => format!("compounded, but {} mm²/s at 40 °C", said(thickness)),
            (false, false) => "not compounded: the sliding worm wipes it off the bronze".to_owned(),
        };
        Some(Judged { fits, off: near + if is_one_of(fluid, &["worm-oil"]) { 0.0 } else { 0.3 }, why })
    });
    Ok(outcome
        .exact("viscosity at 40 °C (AGMA 9005)", nu)
        .says(if found.compounded { "compounded with a little fat" } else { "by the table without fat; with it on a bronze wheel" })
        .choices(choices)
        .caution("No active sulphur and no GL-5 on a bronze wheel: both eat it.", "astm-d130"))
}

fn open(asked: &Asked<'_>, pitch: Velocity, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let (first, also): (&[&str], &[&str]) = match open_gear_medium(pitch) {
        OpenMedium::AdhesiveGrease => {
            (&["tacky-oil", "ep-grease", "moly-grease", "lithium-grease"], &["slideway-oil", "semi-fluid-grease"])
        }
        OpenMedium::SemiFluidGrease => (&["tacky-oil", "semi-fluid-grease"], &["slideway-oil", "lithium-grease"]),
        OpenMedium::TackyOil => (&["tacky-oil"], &["slideway-oil"]),
        OpenMedium::Enclose => (&[], &["tacky-oil"]),
    };
    let dose = open_gear_dose(r, asked.answers.number(&TEETH), asked.answers.quantity(&FACE), asked.answers.quantity(&MODULE))?;
    let choices = choose(asked.reference, |fluid| {
        let place = |classes: &[&str]| classes.iter().position(|class| fluid.classes.first().is_some_and(|main| main == class));
        let rank = |place: usize| f64::from(u32::try_from(place).unwrap_or(u32::MAX));
        if let Some(place) = place(first) {
            return Some(Judged { fits: true, off: rank(place), why: "it clings to the teeth; a thin coat, brushed on".to_owned() });
        }
        let place = place(also)?;
        Some(Judged { fits: !first.is_empty(), off: 10.0 + rank(place), why: "it will do, renewed more often".to_owned() })
    });
    let enclose = open_gear_medium(pitch) == OpenMedium::Enclose;
    Ok(outcome
        .exact("a thin coat on all teeth takes", dose)
        .choices(choices)
        .caution_if(enclose, "So fast everything is flung off: such gears belong in a bath.", "din-51509")
        .caution("Where chips reach the teeth take oil, not grease: grease holds the chips.", "common-practice"))
}

fn has(fluid: &Fluid, wanted: Trait) -> bool {
    fluid.traits.contains(&wanted)
}
