//! A part that is dipped wholly: how it stands, and the bath that covers it.

use formulas::coating::{Immersed, USABLE_SELENIUM_G_PER_L, best_stance, blackening, concentrate_to_buy, immersion};
use formulas::solid_area::{Solid, volume};
use formulas::working::Recorder;
use shop::{Answers, Given};
use units::{Area, Length, MassDensity, Quantity, Ratio, Volume};

use super::{Bench, Step};
use crate::need::Dose;
use crate::needs::Complaint;

pub(super) const LENGTH: Given<Length> = Given::quantity("part_length", "60 mm", "common-practice", "length of a part that is dipped");
pub(super) const WIDTH: Given<Length> = Given::quantity("part_width", "40 mm", "common-practice", "its width");
pub(super) const HEIGHT: Given<Length> = Given::quantity("part_height", "20 mm", "common-practice", "its height");
pub(super) const DIAMETER: Given<Option<Length>> = Given::maybe("part_diameter", "its diameter, where it is round");

/// Room round the part, m; *common practice*.
const ROOM_M: f64 = 0.01;
/// Density of steel, kg/m³.
const STEEL: f64 = 7850.0;
/// A coat of copper selenide, m; *common practice*.
const BLACK_M: f64 = 1e-6;

/// The part's shape.
pub(super) fn solid(answers: &Answers) -> Solid {
    let length = answers.quantity(&LENGTH);
    match answers.maybe(&DIAMETER) {
        Some(diameter) => Solid::Cylinder { diameter, length },
        None => Solid::Block { length, width: answers.quantity(&WIDTH), height: answers.quantity(&HEIGHT) },
    }
}

/// The bath that covers it.
pub(super) struct Dip {
    stands: Length,
    level: Length,
    liquid: Volume,
    /// What one part uses up of it.
    used: Volume,
    /// Concentrate that makes it.
    buy: Volume,
    share: Ratio,
}

impl Dip {
    /// The least bath: the part on its smallest face, 10 mm under it and 25 mm over it.
    pub fn new<R: Recorder>(bench: &Bench<'_>, r: &mut R, area: Area) -> Result<Self, Complaint> {
        /// A vessel is tall enough here: its height is what is asked for.
        const RIM_M: f64 = 10.0;
        let solid = solid(bench.answers());
        let stance = best_stance(r, &solid, Length::from_base(ROOM_M))?;
        let density = MassDensity::from_base(STEEL);
        let part = Immersed { height: stance.height, mass: volume(r, &solid)? * density, density };
        let usable = MassDensity::from_base(USABLE_SELENIUM_G_PER_L);
        let used = blackening(r, area, Length::from_base(BLACK_M), usable)?.bath;
        let bath = immersion(r, &stance.tank, Length::from_base(RIM_M), &part, used)?;
        let known = bench.reference.fluids_of("cold-blackening").find_map(|fluid| fluid.dilution.as_ref());
        let share = Ratio::from_base(known.map_or(1.0, |dilution| dilution.value.likely));
        Ok(Self {
            stands: stance.height,
            level: bath.level,
            liquid: bath.liquid,
            used,
            buy: concentrate_to_buy(r, bath.liquid, share)?,
            share,
        })
    }

    /// The dose of the bath and what to mind about it.
    pub fn applied(&self, step: Step, bench: &Bench<'_>) -> Step {
        // A bath serves a year unless the parts use it up sooner.
        let each_time = self.used.max(self.liquid / bench.times_a_year().max(1.0));
        step.dose(Dose::volume(each_time)).mind(
            format!(
                "Only where the bath covers the part wholly: standing {} high it takes {} of bath, {} deep, in a vessel of glass or plastic \
                 with 30 mm (1¼ in) of rim above; buy {} of concentrate (it is mixed at {}).",
                bench.show(self.stands),
                bench.show(self.liquid),
                bench.show(self.level),
                bench.show(self.buy),
                bench.show(self.share)
            ),
            "common-practice",
        )
    }
}
