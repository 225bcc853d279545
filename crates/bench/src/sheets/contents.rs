//! What is asked about: a fluid by its key, or substances with their shares, by name, key or registry number.

use fields::{Given, did_you_mean};
use reference::{Fluid, Substance};
use units::{MassDensity, Pressure, Quantity, Ratio, parse};

use super::common::fluid;
use super::{Asked, Unanswered};

/// A fluid by key.
pub(super) const FLUID: Given<Vec<String>> = Given::fluids("fluid", "a fluid by key, such as acetone");
/// Substances with their mass shares.
pub(super) const CONTENTS: Given<Option<&'static str>> =
    Given::maybe_name("contents", "in place of a fluid: substances with their shares by mass, such as `acetone 50 %, isopropanol 50 %`");

/// What is asked about.
pub(super) struct Contents<'a> {
    /// What it is called.
    pub name: String,
    /// The fluid, where it is one.
    pub fluid: Option<&'a Fluid>,
    /// Substances with their likely and highest shares by mass.
    pub parts: Vec<(&'a Substance, f64, f64)>,
    /// Density of the liquid.
    pub density: MassDensity,
}

/// Density of a solvent where none is known, kg/m³; *typical, from memory*.
const SOLVENT: f64 = 800.0;

/// The fluid or the substances asked about.
pub(super) fn contents<'a>(asked: &Asked<'a>) -> Result<Contents<'a>, Unanswered> {
    let named = fluid(asked, &FLUID)?;
    match (named, asked.answers.maybe_word(&CONTENTS)) {
        (Some(fluid), None) => {
            let part = |content: &reference::Content| {
                Some((asked.reference.substance(&content.substance)?, content.share.likely, content.share.high))
            };
            let parts = fluid.contents.iter().filter_map(part).collect();
            Ok(Contents { name: fluid.name.clone(), fluid: Some(fluid), parts, density: fluid.density.value })
        }
        (None, Some(text)) => written(asked, text),
        (Some(_), Some(_)) => Err(Unanswered::Contradiction("give `fluid` or `contents`, not both".to_owned())),
        (None, None) => {
            Err(Unanswered::Contradiction("give a `fluid` by key, or its `contents`, such as `acetone 50 %, isopropanol 50 %`".to_owned()))
        }
    }
}

fn written<'a>(asked: &Asked<'a>, text: &str) -> Result<Contents<'a>, Unanswered> {
    let mut parts = Vec::new();
    for piece in text.split(',').map(str::trim).filter(|piece| !piece.is_empty()) {
        let (name, share) = split(piece)?;
        parts.push((substance(asked, name)?, share, share));
    }
    let whole: f64 = parts.iter().map(|(_, share, _)| share).sum();
    if parts.is_empty() {
        return Err(Unanswered::Contradiction("`contents` names nothing: give substances with their shares by mass".to_owned()));
    }
    if whole > 1.0 + 1e-9 {
        let what = format!("the shares of `{text}` add up to {:.1} %: give 100 % at most", whole * 100.0);
        return Err(Unanswered::Contradiction(what));
    }
    // What is not said is water.
    if let Some(water) = asked.reference.substance("water").filter(|_| whole < 1.0 - 1e-9) {
        parts.push((water, 1.0 - whole, 1.0 - whole));
    }
    // The volumes of the parts add up, near enough.
    let density = |substance: &Substance| substance.density.as_ref().map_or(SOLVENT, |known| known.value.base());
    let volume: f64 = parts.iter().map(|(substance, share, _)| share / density(substance)).sum();
    Ok(Contents { name: text.to_owned(), fluid: None, parts, density: MassDensity::from_base(1.0 / volume) })
}

/// A name and its share; a name alone is all of it.
fn split(piece: &str) -> Result<(&str, f64), Unanswered> {
    if !piece.contains('%') {
        return Ok((piece, 1.0));
    }
    let at = piece.trim_end_matches([' ', '%']).rfind(' ').unwrap_or(0);
    let (name, share) = piece.split_at(at);
    let share: Ratio =
        parse(share).map_err(|error| Unanswered::Contradiction(format!("the share in `{piece}` cannot be read: {error}")))?;
    if share.base() > 0.0 && share.base() <= 1.0 {
        Ok((name.trim(), share.base()))
    } else {
        Err(Unanswered::Contradiction(format!("the share in `{piece}` must be above nothing and 100 % at most")))
    }
}

/// A pressure of air that people work in: from high mountains to deep mines.
pub(super) fn outdoors(pressure: Pressure) -> Result<Pressure, Unanswered> {
    if (50e3..=120e3).contains(&pressure.base()) {
        Ok(pressure)
    } else {
        Err(Unanswered::Contradiction("`pressure` is no air that people work in: give something from 50 to 120 kPa".to_owned()))
    }
}

/// A substance by key, name or registry number.
pub(super) fn substance<'a>(asked: &Asked<'a>, name: &str) -> Result<&'a Substance, Unanswered> {
    let same = |substance: &&Substance| {
        substance.key.eq_ignore_ascii_case(name) || substance.name.eq_ignore_ascii_case(name) || substance.cas.as_deref() == Some(name)
    };
    asked.reference.substances.values().find(same).ok_or_else(|| {
        let known = did_you_mean(name, asked.reference.substances.keys().map(String::as_str));
        Unanswered::Contradiction(format!("`{name}` is no substance known here. {known}"))
    })
}
