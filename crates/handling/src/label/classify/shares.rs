//! Lasting harm: what a share alone decides.

use reference::hazard::HazardClass as H;
use uom::si::kinematic_viscosity::square_millimeter_per_second;

use super::{Decided, Sieve, reaches};
use crate::label::Rules;

/// From which share of one substance of the class on a mixture has the class `gives`, in percent by UN GHS, CLP and OSHA.
struct CutOff {
    has: &'static [H],
    gives: H,
    percent: [f64; 3],
}

const fn cut_off(has: &'static [H], gives: H, percent: [f64; 3]) -> CutOff {
    CutOff { has, gives, percent }
}

/// UN GHS chapters 3.4 to 3.9, Regulation (EC) No 1272/2008 Annex I part 3, 29 CFR 1910.1200 Appendix A; *from memory*. Where the UN
/// leaves a choice (sensitisers, reproduction) this is the one that most countries made.
const CUT_OFFS: &[CutOff] = &[
    cut_off(&[H::RespSens1], H::RespSens1, [1.0, 1.0, 0.1]),
    cut_off(&[H::SkinSens1], H::SkinSens1, [1.0, 1.0, 0.1]),
    cut_off(&[H::SkinSens1A], H::SkinSens1, [0.1, 0.1, 0.1]),
    cut_off(&[H::SkinSens1B], H::SkinSens1, [1.0, 1.0, 1.0]),
    cut_off(&[H::Muta1A], H::Muta1A, [0.1, 0.1, 0.1]),
    cut_off(&[H::Muta1B], H::Muta1B, [0.1, 0.1, 0.1]),
    cut_off(&[H::Muta2], H::Muta2, [1.0, 1.0, 1.0]),
    cut_off(&[H::Carc1A], H::Carc1A, [0.1, 0.1, 0.1]),
    cut_off(&[H::Carc1B], H::Carc1B, [0.1, 0.1, 0.1]),
    cut_off(&[H::Carc2], H::Carc2, [1.0, 1.0, 0.1]),
    cut_off(&[H::Repr1A], H::Repr1A, [0.3, 0.3, 0.1]),
    cut_off(&[H::Repr1B], H::Repr1B, [0.3, 0.3, 0.1]),
    cut_off(&[H::Repr2], H::Repr2, [3.0, 3.0, 0.1]),
    cut_off(&[H::Lact], H::Lact, [0.3, 0.3, 0.1]),
    cut_off(&[H::StotSe1], H::StotSe1, [10.0, 10.0, 1.0]),
    cut_off(&[H::StotSe1], H::StotSe2, [1.0, 1.0, 1.0]),
    cut_off(&[H::StotSe2], H::StotSe2, [10.0, 10.0, 1.0]),
    cut_off(&[H::StotRe1], H::StotRe1, [10.0, 10.0, 1.0]),
    cut_off(&[H::StotRe1], H::StotRe2, [1.0, 1.0, 1.0]),
    cut_off(&[H::StotRe2], H::StotRe2, [10.0, 10.0, 1.0]),
];

/// Together from this share on they make drowsy, or irritate the airways, in percent.
const STOT_3: f64 = 20.0;
/// Together from this share on they are drawn into the lungs, in percent …
const ASPIRATION: f64 = 10.0;
/// … if the mixture is no thicker than this at 40 °C, mm²/s.
const THIN: f64 = 20.5;

impl Sieve<'_, '_> {
    pub(super) fn lasting_harm(&mut self) {
        for row in CUT_OFFS {
            self.alone(row);
        }
        for class in [H::StotSe3Irritation, H::StotSe3Narcotic] {
            let mut sum = self.sum(&[class]);
            sum.parts.retain(|part| self.limits_of(part, class).next().is_none());
            sum.percent = sum.parts.iter().map(|part| part.percent()).sum();
            let what = format!("{}:", sum.names());
            let percent = sum.percent;
            self.find_from(class, what, percent, STOT_3);
        }
        let thin = self.mixture.viscosity_40.is_none_or(|nu| nu.get::<square_millimeter_per_second>() <= THIN + 1e-9);
        let sum = self.sum(&[H::AspTox1]);
        let (what, percent) = (format!("no thicker than {THIN} mm²/s at 40 °C, and {}:", sum.names()), sum.percent);
        if thin {
            self.find_from(H::AspTox1, what, percent, ASPIRATION);
        }
    }

    /// The substance of the greatest share decides; these classes are not added up.
    fn alone(&mut self, row: &CutOff) {
        let cut_off = match self.rules {
            Rules::UnGhs => row.percent[0],
            Rules::Clp => row.percent[1],
            Rules::Osha => row.percent[2],
        };
        for part in &self.mixture.parts {
            let Some(hazard) = part.substance.hazards.iter().find(|hazard| row.has.contains(&hazard.class)) else { continue };
            if self.limits_of(part, row.gives).next().is_some() || !reaches(part.percent(), cut_off) {
                continue;
            }
            // A substance may narrow the statement by letters; they hold while the class is the same.
            let letters = hazard.statement.strip_prefix(row.gives.statement()).unwrap_or_default();
            let statement = format!("{}{letters}", row.gives.statement());
            let classified = reference::hazard::Classified { class: row.gives, statement };
            let decided = Decided { value: part.percent(), cut_off, unit: "%" };
            self.find(classified, format!("{}:", part.substance.name), Some(decided));
        }
    }
}
