//! A steam cylinder: how hot its steam is, which oil stays on the bore, and how much.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::steam::saturation_temperature;
use formulas::steam_cylinder::{FLASH_ABOVE_K, Steam, VISCOSITY_IN_STEAM, cylinder_oil, hourly_feed};
use reference::{Fluid, Trait};
use units::{AngularVelocity, Length, Pressure, Quantity, Temperature, TemperatureDifference};

use super::common::{Judged, Oil, choose, is_one_of, mm2, said};
use super::viscosity::chart;
use super::{Asked, Outcome, Unanswered};

const PRESSURE: Given<Pressure> = Given::quantity("pressure", "3 bar", "common-practice", "pressure on the gauge");
const SUPERHEAT: Given<TemperatureDifference> =
    Given::quantity("superheat", "0 K", "common-practice", "how much hotter the steam is than saturated steam");
const BORE: Given<Length> = Given::quantity("bore", "25 mm", "common-practice", "bore of the cylinder");
const STROKE: Given<Length> = Given::quantity("stroke", "25 mm", "common-practice", "stroke");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "300 rpm", "common-practice", "speed of the crank");

const WET: Given<bool> = Given::flag("wet", "no", "common-practice", "whether water comes over with the steam, as from a small boiler");

pub(super) static KIND: Kind = Kind {
    name: "cylinder",
    about: "which oil a steam cylinder wants, and how much",
    fields: &[PRESSURE.field(), SUPERHEAT.field(), BORE.field(), STROKE.field(), SPEED.field(), WET.field()],
};

/// Thinner than this share of what is wanted, it does not; thicker than so many times, it drags and gathers. *Common practice.*
const LEAST: f64 = 0.9;
const MOST: f64 = 4.5;
/// From here on steam is dry, and fat only chars; *common practice*.
const DRY_K: f64 = 20.0;

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let gauge: Pressure = answers.quantity(&PRESSURE);
    let superheat: TemperatureDifference = answers.quantity(&SUPERHEAT);
    let (bore, stroke, speed): (Length, Length, AngularVelocity) =
        (answers.quantity(&BORE), answers.quantity(&STROKE), answers.quantity(&SPEED));
    let none = Length::from_base(0.0);
    if bore <= none || stroke <= none || speed <= AngularVelocity::from_base(0.0) {
        return Err(Unanswered::Contradiction("`bore`, `stroke` and `speed` must be more than nothing".to_owned()));
    }
    if gauge <= Pressure::from_base(0.0) {
        return Err(Unanswered::Contradiction(
            "an engine runs on steam above the air's pressure: give the `pressure` on the gauge".to_owned(),
        ));
    }
    if superheat < TemperatureDifference::from_base(0.0) {
        return Err(Unanswered::Contradiction("the superheat is less than nothing: give 0 K for saturated steam".to_owned()));
    }
    let saturated = saturation_temperature(r, gauge)?;
    let steam = saturated + superheat;
    let wet = answers.flag(&WET);
    let kind = match superheat.base() {
        k if k > 0.0 => Steam::Superheated(steam),
        _ if wet => Steam::Wet,
        _ => Steam::Dry,
    };
    let oil = cylinder_oil(r, gauge, kind)?;
    let feed = hourly_feed(r, bore, stroke, speed, wet);
    let mut outcome = Outcome::default().exact("saturated steam", saturated);
    if superheat > TemperatureDifference::from_base(0.0) {
        outcome = outcome.exact("steam in the cylinder", steam);
    }
    let choices = choose(asked.reference, |fluid| judge(fluid, steam, superheat, (oil.grades.low, oil.grades.high)));
    let shown: Vec<Oil> = choices.iter().take(3).filter_map(|row| asked.reference.fluid(&row.key).and_then(Oil::of)).collect();
    let mut picture = chart(&shown, None);
    picture.x.high = super::common::celsius(steam) + 40.0;
    picture.y.low = 2.0;
    for (line, oil) in picture.lines.iter_mut().zip(&shown) {
        let points = (0..=130).filter_map(|step| {
            let at = picture.x.low + (picture.x.high - picture.x.low) * f64::from(step) / 130.0;
            Some((at, oil.silent(super::common::from_celsius(at))?))
        });
        line.points = points.collect();
        picture
            .marks
            .extend(oil.silent(steam).map(|nu| crate::picture::Mark { name: String::new(), at: (super::common::celsius(steam), nu) }));
    }
    picture.bands.push(crate::picture::Band {
        name: "wanted in the steam".to_owned(),
        low: VISCOSITY_IN_STEAM * LEAST,
        high: VISCOSITY_IN_STEAM * MOST,
    });
    Ok(outcome
        .numbers("grade, ISO VG", "", oil.grades)
        .numbers("fat in it", "%", oil.fat_percent)
        .exact("flash point at least", oil.flash)
        .numbers("feed", "drops/h", feed.drops)
        .says("from the floor of the books to what owners of small engines give")
        .range("that is, in an hour", feed.volume)
        .choices(choices)
        .picture(picture)
        .caution("Let the pressure down before you open a lubricator, unless it can be shut off.", "common-practice")
        .caution("No engine oil: it makes an emulsion with the water and lubricates nothing.", "common-practice"))
}

fn judge(fluid: &Fluid, steam: Temperature, superheat: TemperatureDifference, grades: (f64, f64)) -> Option<Judged> {
    if !is_one_of(fluid, &["steam-cylinder-oil", "motion-oil", "engine-oil", "worm-oil"]) {
        return None;
    }
    /// What one grade of ISO 3448 lies to either side.
    const GRADE: f64 = 0.1;
    let nu = Oil::of(fluid)?.silent(steam)?;
    let grade = mm2(fluid.oil.as_ref()?.viscosity_40);
    let off = (nu / VISCOSITY_IN_STEAM).ln().abs();
    let thick = format!("{} mm²/s in the steam, of about {} wanted", said(nu), said(VISCOSITY_IN_STEAM));
    let flash = fluid.flash.as_ref().is_some_and(|flash| flash.value.base() < steam.base() + FLASH_ABOVE_K);
    let dry = superheat.base() > DRY_K;
    let fatty = fluid.traits.contains(&Trait::Fatty);
    let (fits, say) = if fluid.traits.contains(&Trait::Detergent) {
        (false, "detergent oil and wet steam make an emulsion")
    } else if flash {
        (false, "its flash point is too near the steam: it smokes off and cokes the ports")
    } else if nu < VISCOSITY_IN_STEAM * LEAST && grade < grades.0 * (1.0 - GRADE) {
        (false, "too thin to stay on the bore")
    } else if nu < VISCOSITY_IN_STEAM * LEAST {
        (true, "of the grade the trade uses, though thin in so hot a steam: feed it often")
    } else if nu > VISCOSITY_IN_STEAM * MOST {
        (false, "so thick it gathers in the ports")
    } else if !is_one_of(fluid, &["steam-cylinder-oil"]) {
        (true, "it will do for a while at low pressure")
    } else if grade > grades.1 * (1.0 + GRADE) {
        (true, "it serves, thicker than it need be")
    } else if !dry && !fatty {
        (false, "wet steam washes a straight oil off")
    } else if dry && fatty {
        (true, "thick enough; one with little or no fat chars less in dry steam")
    } else {
        (true, "compounded, thick enough and safe in this steam")
    };
    Some(Judged { fits, off: off + if is_one_of(fluid, &["steam-cylinder-oil"]) { 0.0 } else { 1.0 }, why: format!("{say}; {thick}") })
}
