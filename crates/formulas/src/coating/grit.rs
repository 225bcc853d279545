//! Rubbing down: which grits to go through, and what they take off.

use units::Length;
use uom::si::length::micrometer;

use crate::error::FormulaError;
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Grits of coated abrasives and their mean grain, µm: ISO 6344, *from memory*.
pub const GRITS: [(u16, f64); 9] =
    [(120, 125.0), (180, 82.0), (240, 58.5), (320, 46.2), (400, 35.0), (600, 25.8), (800, 21.8), (1200, 15.3), (2000, 10.3)];

/// One grit of a sequence.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GritStep {
    /// The grit, as written on its back.
    pub grit: u16,
    /// Its mean grain.
    pub grain: Length,
    /// What it must take off each face, to be rid of the scratches of the grit before.
    pub takes_off: Length,
}

/// Grits to go through, and what they take off in all.
#[derive(Debug, Clone, PartialEq)]
pub struct Rubbing {
    /// From coarse to fine.
    pub steps: Vec<GritStep>,
    /// What a face loses by the grits after the first; what the first takes depends on how rough the face was.
    pub takes_off: Length,
}

/// The fewest grits from a coarse to a fine one, none more than twice as fine as the one before.
///
/// # Errors
/// [`FormulaError::Refused`] for a grit that is not in [`GRITS`], or a last grit coarser than the first.
///
/// # Source
/// Grains of ISO 6344, *from memory*. Twice as fine at most, a right angle turned at each, and a third of the grain before taken off each
/// face are *common practice, no source*.
///
/// # Example
/// From P120 to P400 by way of P180 and P320: 125, 82, 46.2, 35 µm.
/// ```
/// use formulas::{Silent, coating::grit_sequence};
/// let rubbing = grit_sequence(&mut Silent, 120, 400)?;
/// assert_eq!(rubbing.steps.iter().map(|step| step.grit).collect::<Vec<_>>(), [120, 180, 320, 400]);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn grit_sequence<R: Recorder>(r: &mut R, first: u16, last: u16) -> Result<Rubbing, FormulaError> {
    let place = |grit| GRITS.iter().position(|(known, _)| *known == grit);
    let (Some(from), Some(to)) = (place(first), place(last)) else {
        return Err(FormulaError::Refused {
            what: "this grit",
            why: "its grain is not known here",
            instead: "take one of P120, P180, P240, P320, P400, P600, P800, P1200 and P2000",
        });
    };
    let range = GRITS.get(from..=to).filter(|range| !range.is_empty()).ok_or(FormulaError::Refused {
        what: "this sequence",
        why: "its last grit is coarser than its first",
        instead: "go from the small number to the large one",
    })?;
    let um = Length::new::<micrometer>;
    let mut steps: Vec<GritStep> = Vec::new();
    let mut total = 0.0;
    for (at, (grit, grain)) in range.iter().enumerate() {
        let Some(before) = steps.last().map(|step| step.grain) else {
            steps.push(GritStep { grit: *grit, grain: um(*grain), takes_off: um(0.0) });
            continue;
        };
        // A grit is left out where the one after it is still coarse enough to follow the one before it.
        let next_follows = range.get(at + 1).is_some_and(|(_, next)| before.get::<micrometer>() / next <= 2.0);
        if next_follows {
            continue;
        }
        given!(r, g[micrometer] = before, "grain of the grit before");
        step!(r, s[micrometer] = g / 3.0, sources::COMMON_PRACTICE);
        total += s;
        steps.push(GritStep { grit: *grit, grain: um(*grain), takes_off: um(s) });
    }
    r.caution(Caution::Provided { that: "no grit gets near ways, bearings or threads: mask them, and wash the part between grits" });
    Ok(Rubbing { steps, takes_off: um(total) })
}
