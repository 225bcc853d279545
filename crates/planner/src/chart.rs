//! What goes on each point and into each step, out of the fluids the plan counts on.

use reference::Reference;
use units::System;

use crate::demand::{Demand, Test};
use crate::need::{Need, Place, Ration};
use crate::plan::Weighed;
use crate::verdict::{Grade, grade_by};

/// What goes on one point, or into one step of a job.
#[derive(Debug, Clone)]
pub struct Serving {
    /// The need, as a place in the plan's list.
    pub need: usize,
    /// The fluid, as a place in the plan's list; none where nothing serves or nothing is wanted.
    pub fluid: Option<usize>,
    /// How well it serves.
    pub grade: Option<Grade>,
    /// How much and how often.
    pub ration: Option<Ration>,
    /// How it is put there.
    pub how: String,
    /// Why this fluid and no other, or why none.
    pub reason: String,
}

/// The best of the kept fluids for each need: the best grade, and among equals the one kept first. Reasons are told in these units.
pub(crate) fn serve(needs: &[Need], fluids: &[Weighed<'_>], kept: &[usize], reference: &Reference, units: System) -> Vec<Serving> {
    needs.iter().enumerate().map(|(place, need)| serving(place, need, fluids, kept, reference, units)).collect()
}

fn serving(place: usize, need: &Need, fluids: &[Weighed<'_>], kept: &[usize], reference: &Reference, units: System) -> Serving {
    if let Some(nothing) = &need.nothing {
        return Serving { need: place, fluid: None, grade: None, ration: None, how: String::new(), reason: nothing.to_string() };
    }
    let best = kept.iter().copied().filter(|fluid| fluids[*fluid].grades[place].serves()).min_by_key(|fluid| fluids[*fluid].grades[place]);
    let Some(best) = best else {
        return Serving {
            need: place,
            fluid: None,
            grade: None,
            ration: None,
            how: String::new(),
            reason: unserved(place, need, fluids, reference, units),
        };
    };
    let fluid = fluids[best].fluid;
    let dry = fluid.is("dry-cutting");
    Serving {
        need: place,
        fluid: Some(best),
        grade: Some(fluids[best].grades[place]),
        ration: need.ration(fluid.form).filter(|_| !dry).map(|ration| Ration { dose: ration.dose.as_sold(fluid), ..ration.clone() }),
        how: if dry { "brush the chips away".to_owned() } else { need.how.words(fluid.form).into_owned() },
        reason: need.leading_reason(),
    }
}

/// Why none of the kept fluids serves: what would, or that nothing known does.
fn unserved(place: usize, need: &Need, fluids: &[Weighed<'_>], reference: &Reference, units: System) -> String {
    if let Some(harm) = makers_harm(place, need, fluids, reference) {
        return harm;
    }
    let names = |grade: Grade| -> Vec<&str> {
        fluids
            .iter()
            .filter(|weighed| weighed.allowed && weighed.grades[place] == grade)
            .map(|weighed| weighed.fluid.name.as_str())
            .collect()
    };
    let (right, will_do) = (names(Grade::Right), names(Grade::WillDo));
    match (right.first(), will_do.first()) {
        (Some(right), _) => format!("not yet on the ladder: {right} would be right"),
        (None, Some(will_do)) => format!("not yet on the ladder: {will_do} would do"),
        (None, None) => {
            if let Some(air) = fouls_the_air(need, fluids, reference, units) {
                return air;
            }
            let refused =
                fluids.iter().find(|weighed| !weighed.allowed && weighed.fluid.barred.is_none() && weighed.grades[place].serves());
            refused.map_or_else(
                || "no fluid known here meets every demand of this place".to_owned(),
                |weighed| format!("you chose to do without {}, which would serve", weighed.fluid.name),
            )
        }
    }
}

/// What is said where only the air of the room stands against a fluid: how it could be used after all.
fn fouls_the_air(need: &Need, fluids: &[Weighed<'_>], reference: &Reference, units: System) -> Option<String> {
    let spent = need.demands.iter().find_map(|demand| match &demand.test {
        Test::SafeAir(spent) => Some(spent),
        _ => None,
    })?;
    let otherwise = |weighed: &&Weighed<'_>| grade_by(need, weighed.fluid, reference, |test| !matches!(test, Test::SafeAir(_)));
    let best = fluids.iter().filter(|weighed| weighed.allowed && otherwise(weighed).serves()).min_by_key(otherwise)?;
    let words = spent.words(best.fluid, reference, units)?;
    Some(format!("nothing that serves may be used so in this room; {}, {words}", best.fluid.name))
}

/// What is said where the maker names a fluid that would harm the place.
fn makers_harm(place: usize, need: &Need, fluids: &[Weighed<'_>], reference: &Reference) -> Option<String> {
    let maker = need.demands.iter().find(|demand| demand.source == "maker" && matches!(demand.test, Test::Class { .. }))?;
    let named = |weighed: &&Weighed<'_>| maker.judge(weighed.fluid, reference).is_some_and(|judged| judged.grade == Grade::Right);
    let harmful = fluids.iter().filter(named).find(|weighed| weighed.grades[place] == Grade::Harmful)?;
    let harms = |demand: &&Demand| demand.judge(harmful.fluid, reference).is_some_and(|judged| judged.grade == Grade::Harmful);
    let why = need.demands.iter().find(harms).map_or_else(String::new, |demand| demand.why.to_string());
    Some(format!("the maker names {}, but {why}: ask the maker before you use it", harmful.fluid.name))
}

/// Whether a need is a point of a machine.
#[must_use]
pub fn is_point(need: &Need) -> bool {
    matches!(need.place, Place::Point { .. })
}
