//! Where no one fluid serves from the coldest start to the hottest day, and what to change with the season.

use reference::Reference;

use crate::demand::Test;
use crate::need::Need;
use crate::plan::Weighed;
use crate::verdict::{Grade, grade_by};

/// A place that wants one fluid in the cold months and another in the warm ones.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Season {
    /// The need, as a place in the plan's list.
    pub need: usize,
    /// The fluid for the cold months, as a place in the plan's list.
    pub cold: usize,
    /// The fluid for the warm months.
    pub warm: usize,
}

/// The places where no fluid is right all year while one is in each season.
pub(crate) fn seasons(needs: &[Need], fluids: &[Weighed<'_>], reference: &Reference) -> Vec<Season> {
    needs.iter().enumerate().filter_map(|(place, need)| season(place, need, fluids, reference)).collect()
}

fn season(place: usize, need: &Need, fluids: &[Weighed<'_>], reference: &Reference) -> Option<Season> {
    if need.nothing.is_some() || fluids.iter().any(|weighed| weighed.allowed && weighed.grades[place] == Grade::Right) {
        return None;
    }
    let right = |of_season: fn(&Test) -> bool| {
        fluids.iter().position(|weighed| weighed.allowed && grade_by(need, weighed.fluid, reference, of_season) == Grade::Right)
    };
    let (cold, warm) = (right(asked_in_the_cold)?, right(asked_in_the_warm)?);
    (cold != warm).then_some(Season { need: place, cold, warm })
}

/// In the cold months the film on the hottest day is no matter.
fn asked_in_the_cold(test: &Test) -> bool {
    !matches!(test, Test::NotThinner { .. } | Test::ThickOrWith { .. })
}

/// In the warm months neither the cold start nor the thickness on a usual day is.
fn asked_in_the_warm(test: &Test) -> bool {
    !matches!(test, Test::Flows { .. } | Test::NotThicker { .. })
}
