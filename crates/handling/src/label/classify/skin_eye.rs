//! Skin and eyes: sums of what burns and what irritates, and the pH.

use reference::hazard::HazardClass as H;

use super::{Decided, Sieve, own, reaches};
use crate::label::Part;

const CORROSIVE: &[H] = &[H::SkinCorr1, H::SkinCorr1A, H::SkinCorr1B, H::SkinCorr1C];
const BURNS_EYES: &[H] = &[H::SkinCorr1, H::SkinCorr1A, H::SkinCorr1B, H::SkinCorr1C, H::EyeDam1];

/// Cut-offs of the sums, in percent; UN GHS chapters 3.2 and 3.3, tables 3.2.3 and 3.3.3; *from memory*.
const SKIN_BURNS: f64 = 5.0;
const EYES_BURN: f64 = 3.0;
const CORROSIVE_IRRITATES: f64 = 1.0;
const IRRITANT_IRRITATES: f64 = 10.0;
/// pH at which a mixture counts as corrosive unless its reserve is known to be small.
const ACID: f64 = 2.0;
const ALKALINE: f64 = 11.5;

impl Sieve<'_, '_> {
    pub(super) fn skin_and_eyes(&mut self) {
        // Each sum is of shares over their cut-offs, which is the published sum where all substances have the same ones.
        let burns = self.ratio(|sieve, part| {
            let own_limit = sieve.limit(part, CORROSIVE);
            has(part, CORROSIVE).then(|| own_limit.unwrap_or(SKIN_BURNS))
        });
        self.find_ratio(H::SkinCorr1, "what burns the skin:", burns, SKIN_BURNS);

        let irritates = self.ratio(|sieve, part| {
            let own_limit = sieve.limit(part, &[H::SkinIrrit2]);
            if has(part, CORROSIVE) {
                Some(own_limit.unwrap_or(CORROSIVE_IRRITATES))
            } else {
                (has(part, &[H::SkinIrrit2]) || own_limit.is_some()).then(|| own_limit.unwrap_or(IRRITANT_IRRITATES))
            }
        });
        self.find_ratio(H::SkinIrrit2, "ten times what burns the skin, and what irritates it:", irritates, IRRITANT_IRRITATES);

        let eyes_burn = self.ratio(|sieve, part| {
            // Where the law sets a share from which eyes are only irritated, they are hurt from where the skin is.
            let irritates_first = sieve.limit(part, &[H::EyeIrrit2]).is_some();
            let as_skin = || sieve.limit(part, CORROSIVE).filter(|_| irritates_first);
            let own_limit = sieve.limit(part, &[H::EyeDam1]).or_else(as_skin);
            has(part, BURNS_EYES).then(|| own_limit.unwrap_or(EYES_BURN))
        });
        self.find_ratio(H::EyeDam1, "what burns skin or eyes:", eyes_burn, EYES_BURN);

        let eyes_itch = self.ratio(|sieve, part| {
            let own_limit = sieve.limit(part, &[H::EyeIrrit2]);
            if has(part, BURNS_EYES) {
                Some(own_limit.unwrap_or(CORROSIVE_IRRITATES))
            } else {
                (has(part, &[H::EyeIrrit2]) || own_limit.is_some()).then(|| own_limit.unwrap_or(IRRITANT_IRRITATES))
            }
        });
        self.find_ratio(H::EyeIrrit2, "ten times what burns skin or eyes, and what irritates eyes:", eyes_itch, IRRITANT_IRRITATES);

        self.ph();
    }

    /// Sum of the shares, each over its cut-off in percent.
    fn ratio(&self, cut_off: impl Fn(&Self, &Part<'_>) -> Option<f64>) -> f64 {
        self.mixture.parts.iter().filter_map(|part| Some(part.percent() / cut_off(self, part)?)).sum()
    }

    fn find_ratio(&mut self, class: H, what: &str, ratio: f64, cut_off: f64) {
        self.find_from(class, what.to_owned(), ratio * cut_off, cut_off);
    }

    /// The least share from which the European rules give this substance one of these classes, in percent.
    fn limit(&self, part: &Part<'_>, classes: &[H]) -> Option<f64> {
        let kind_of = *classes.first()?;
        let limits = self.limits_of(part, kind_of).filter(|limit| classes.contains(&limit.hazard.class));
        limits.map(|limit| limit.from * 100.0).min_by(f64::total_cmp)
    }

    fn ph(&mut self) {
        let Some(ph) = self.mixture.ph.filter(|_| !self.mixture.low_reserve) else { return };
        let cut_off = if reaches(-ph, -ACID) {
            ACID
        } else if reaches(ph, ALKALINE) {
            ALKALINE
        } else {
            return;
        };
        for class in [H::SkinCorr1, H::EyeDam1] {
            self.find(
                own(class),
                "its reserve of acid or alkali has not been measured, and pH",
                Some(Decided { value: ph, cut_off, unit: "" }),
            );
        }
    }
}

fn has(part: &Part<'_>, classes: &[H]) -> bool {
    part.substance.hazards.iter().any(|hazard| classes.contains(&hazard.class))
}
