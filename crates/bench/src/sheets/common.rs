//! What several sheets ask and do alike.

use fields::Given;
use formulas::viscosity::Measured;
use formulas::viscosity_index::viscosity_100_from_index;
use formulas::{Recorder, Silent};
use reference::Fluid;
use units::{KinematicViscosity, Quantity, Temperature};

use super::{Asked, Unanswered};

/// Fluids by key.
pub(super) const FLUID: Given<Vec<String>> = Given::fluids("fluid", "one or more oils by key, such as slideway-68");
/// Viscosity at 40 °C of an oil that is not on the list.
pub(super) const AT_40: Given<Option<KinematicViscosity>> = Given::maybe("at_40", "viscosity at 40 °C, from the data sheet");
/// Viscosity at 100 °C of an oil that is not on the list.
pub(super) const AT_100: Given<Option<KinematicViscosity>> = Given::maybe("at_100", "viscosity at 100 °C, from the data sheet");
/// Viscosity index of an oil that is not on the list.
pub(super) const INDEX: Given<Option<f64>> = Given::maybe_number("index", "viscosity index, in place of the viscosity at 100 °C");

/// An oil by two measured points.
pub(super) struct Oil {
    /// What it is called.
    pub name: String,
    /// At 40 °C.
    pub cool: Measured,
    /// At 100 °C.
    pub hot: Measured,
}

impl Oil {
    fn of(fluid: &Fluid) -> Option<Self> {
        let oil = fluid.oil.as_ref()?;
        Some(Self { name: fluid.name.clone(), cool: Measured::at_40(oil.viscosity_40), hot: Measured::at_100(oil.viscosity_100?) })
    }
}

/// The oils asked about: by key, or by the values of a data sheet.
pub(super) fn oils<R: Recorder>(asked: &Asked<'_>, r: &mut R) -> Result<Vec<Oil>, Unanswered> {
    let mut oils = Vec::new();
    for key in asked.answers.words(&FLUID) {
        let oil = asked.reference.fluid(key).and_then(Oil::of);
        oils.push(oil.ok_or_else(|| Unanswered::Contradiction(format!("`{key}` is no oil, or no viscosity of it is known")))?);
    }
    if let Some(cool) = asked.answers.maybe(&AT_40) {
        let hot = match (asked.answers.maybe(&AT_100), asked.answers.maybe_number(&INDEX)) {
            (Some(hot), None) => hot,
            (None, Some(index)) => viscosity_100_from_index(r, cool, index)?,
            (Some(_), Some(_)) => return Err(Unanswered::Contradiction("give `at_100` or `index`, not both".to_owned())),
            (None, None) => return Err(Unanswered::Contradiction("`at_40` alone is not enough: give `at_100` or `index` too".to_owned())),
        };
        oils.push(Oil { name: "your oil".to_owned(), cool: Measured::at_40(cool), hot: Measured::at_100(hot) });
    }
    if oils.is_empty() {
        return Err(Unanswered::Contradiction("no oil is named: give `fluid`, or `at_40` with `at_100` or `index`".to_owned()));
    }
    Ok(oils)
}

/// A viscosity without its working, for the points of a picture.
pub(super) fn silent_viscosity(oil: &Oil, at: Temperature) -> Option<f64> {
    formulas::viscosity::viscosity_at(&mut Silent, oil.cool, oil.hot, at).ok().map(|nu| nu.base() * 1e6)
}
