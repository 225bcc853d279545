//! What several sheets ask and do alike.

use fields::Given;
use formulas::viscosity::{Measured, density_at, dynamic_viscosity, viscosity_at};
use formulas::viscosity_index::viscosity_100_from_index;
use formulas::{Recorder, Silent};
use reference::{Fluid, Reference};
use units::{DynamicViscosity, KinematicViscosity, Length, MassDensity, Quantity, Temperature};
pub(super) use units::{ICE as ZERO_C, celsius as from_celsius, in_celsius as celsius};

use super::{Asked, Unanswered};
use crate::page::ChoiceRow;

/// Fluids by key.
pub(super) const FLUID: Given<Vec<String>> = Given::fluids("fluid", "one or more oils by key, such as slideway-68");
/// Viscosity at 40 °C of an oil that is not on the list.
pub(super) const AT_40: Given<Option<KinematicViscosity>> = Given::maybe("at_40", "viscosity at 40 °C, from the data sheet");
/// Viscosity at 100 °C of an oil that is not on the list.
pub(super) const AT_100: Given<Option<KinematicViscosity>> = Given::maybe("at_100", "viscosity at 100 °C, from the data sheet");
/// Viscosity index of an oil that is not on the list.
pub(super) const INDEX: Given<Option<f64>> = Given::maybe_number("index", "viscosity index, in place of the viscosity at 100 °C");

/// Density of a mineral oil that is not on the list; *typical, from memory*.
const MINERAL: f64 = 880.0;

/// An oil by two measured points.
pub(super) struct Oil {
    /// What it is called.
    pub name: String,
    /// At 40 °C.
    pub cool: Measured,
    /// At 100 °C.
    pub hot: Measured,
    /// Density at 15 °C.
    pub density: MassDensity,
}

impl Oil {
    /// The oil, or a grease's base oil; none where too little is known of it.
    pub(super) fn of(fluid: &Fluid) -> Option<Self> {
        let oil = fluid.oil.as_ref()?;
        Some(Self {
            name: fluid.name.clone(),
            cool: Measured::at_40(oil.viscosity_40),
            hot: Measured::at_100(oil.viscosity_100?),
            density: fluid.density.value,
        })
    }

    /// Viscosity with its working.
    pub(super) fn viscosity<R: Recorder>(&self, r: &mut R, at: Temperature) -> Result<KinematicViscosity, Unanswered> {
        Ok(viscosity_at(r, self.cool, self.hot, at)?)
    }

    /// Dynamic viscosity with its working.
    pub(super) fn dynamic<R: Recorder>(&self, r: &mut R, at: Temperature) -> Result<DynamicViscosity, Unanswered> {
        let nu = self.viscosity(r, at)?;
        let density = density_at(r, self.density, at);
        Ok(dynamic_viscosity(r, nu, density))
    }

    /// Viscosity in mm²/s without its working, for pictures and choices.
    pub(super) fn silent(&self, at: Temperature) -> Option<f64> {
        viscosity_at(&mut Silent, self.cool, self.hot, at).ok().map(mm2)
    }
}

/// The oils asked about, by key or by the values of a data sheet; none where none is named.
pub(super) fn oils_if_any<R: Recorder>(asked: &Asked<'_>, r: &mut R) -> Result<Vec<Oil>, Unanswered> {
    let mut oils = Vec::new();
    for key in asked.answers.words(&FLUID) {
        let oil = asked.reference.fluid(key).and_then(Oil::of);
        oils.push(oil.ok_or_else(|| Unanswered::Contradiction(format!("`{key}` is no oil, or no viscosity of it is known")))?);
    }
    match (asked.answers.maybe(&AT_40), asked.answers.maybe(&AT_100), asked.answers.maybe_number(&INDEX)) {
        (Some(cool), Some(hot), None) => oils.push(yours(cool, hot)),
        (Some(cool), None, Some(index)) => oils.push(yours(cool, viscosity_100_from_index(r, cool, index)?)),
        (Some(_), Some(_), Some(_)) => return Err(Unanswered::Contradiction("give `at_100` or `index`, not both".to_owned())),
        (Some(_), None, None) => {
            return Err(Unanswered::Contradiction("`at_40` alone is not enough: give `at_100` or `index` too".to_owned()));
        }
        (None, None, None) => {}
        (None, ..) => return Err(Unanswered::Contradiction("`at_100` and `index` say nothing without `at_40`: give it too".to_owned())),
    }
    Ok(oils)
}

fn yours(cool: KinematicViscosity, hot: KinematicViscosity) -> Oil {
    Oil { name: "your oil".to_owned(), cool: Measured::at_40(cool), hot: Measured::at_100(hot), density: MassDensity::from_base(MINERAL) }
}

/// The oils asked about, of which there must be one.
pub(super) fn oils<R: Recorder>(asked: &Asked<'_>, r: &mut R) -> Result<Vec<Oil>, Unanswered> {
    let oils = oils_if_any(asked, r)?;
    if oils.is_empty() {
        return Err(Unanswered::Contradiction("no oil is named: give `fluid`, or `at_40` with `at_100` or `index`".to_owned()));
    }
    Ok(oils)
}

/// The one fluid named by a field; none where none is.
pub(super) fn fluid<'a>(asked: &Asked<'a>, field: &Given<Vec<String>>) -> Result<Option<&'a Fluid>, Unanswered> {
    match asked.answers.words(field) {
        [] => Ok(None),
        [one] => Ok(asked.reference.fluid(one)),
        [..] => Err(Unanswered::Contradiction(format!("`{}` takes one fluid: keep one of them", field.field().name))),
    }
}

/// How a fluid suits a place.
pub(super) struct Judged {
    /// Whether it serves.
    pub fits: bool,
    /// How far it is from the best: 0 is the best.
    pub off: f64,
    /// Why, or why not.
    pub why: String,
}

/// The fluids that serve, the best first, and after them the few that come nearest; never more than one reads.
pub(super) fn choose(reference: &Reference, mut judge: impl FnMut(&Fluid) -> Option<Judged>) -> Vec<ChoiceRow> {
    const SHOWN: usize = 8;
    const MISSED: usize = 3;
    let mut judged: Vec<(&Fluid, Judged)> =
        reference.fluids.values().filter(|fluid| fluid.barred.is_none()).filter_map(|fluid| Some((fluid, judge(fluid)?))).collect();
    judged.sort_by(|(_, a), (_, b)| b.fits.cmp(&a.fits).then(a.off.total_cmp(&b.off)));
    let fitting = judged.iter().filter(|(_, judged)| judged.fits).count();
    let misses = judged.split_off(fitting);
    let shown = judged.into_iter().take(SHOWN).chain(misses.into_iter().take(MISSED));
    shown.map(|(fluid, Judged { fits, why, .. })| choice(fluid, fits, why)).collect()
}

/// A fluid as a way.
pub(super) fn choice(fluid: &Fluid, fits: bool, why: impl Into<String>) -> ChoiceRow {
    ChoiceRow { key: fluid.key.clone(), name: fluid.name.clone(), fits, why: why.into() }
}

/// Judges a viscosity against a window: how far from its middle by ratio, and in words.
pub(super) fn in_window(nu: f64, (low, high): (f64, f64), where_: &str) -> Judged {
    let middle = (low * high).sqrt();
    let why = if nu < low {
        format!("{} mm²/s {where_}, thinner than {} mm²/s", said(nu), said(low))
    } else if nu > high {
        format!("{} mm²/s {where_}, thicker than {} mm²/s", said(nu), said(high))
    } else {
        format!("{} mm²/s {where_}", said(nu))
    };
    Judged { fits: (low..=high).contains(&nu), off: (nu / middle).ln().abs(), why }
}

/// Whether a fluid belongs to one of these classes.
pub(super) fn is_one_of(fluid: &Fluid, classes: &[&str]) -> bool {
    fluid.classes.iter().any(|class| classes.contains(&class.as_str()))
}

/// A number with three digits.
pub(super) fn said(value: f64) -> String {
    units::show_number(value, units::Digits::Significant(3))
}

/// mm²/s.
pub(super) fn mm2(nu: KinematicViscosity) -> f64 {
    nu.base() * 1e6
}

/// From mm²/s.
pub(super) fn from_mm2(nu: f64) -> KinematicViscosity {
    KinematicViscosity::from_base(nu * 1e-6)
}

/// From micrometres.
pub(super) fn micrometres(value: f64) -> Length {
    Length::from_base(value * 1e-6)
}

/// A film as people say it.
pub(super) fn film(thickness: Length) -> String {
    format!("{} µm", said(thickness.base() * 1e6))
}

/// A temperature as people say it.
pub(super) fn degrees(at: Temperature) -> String {
    units::show(at, units::System::Metric)
}
