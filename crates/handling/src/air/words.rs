//! What one breathes, in words.

use formulas::flammability::SAFE_SHARE;
use reference::substance::{Concentration, Regime};
use units::{Digits, Quantity, System, show, show_number};

use super::exposure::{Exposure, Held, Limited};

fn digits(value: f64) -> String {
    show_number(value, Digits::Significant(2))
}

/// Whose rule it is, as people say it.
#[must_use]
pub fn whose(regime: Option<Regime>) -> &'static str {
    match regime {
        Some(Regime::NioshRel) => "NIOSH",
        Some(Regime::OshaPel) => "OSHA",
        Some(Regime::UsEpa) => "EPA",
        Some(Regime::Ontario) => "Ontario",
        Some(Regime::Clp) => "European Union",
        Some(_) => "supplier's advice",
        None => "three times the 8 h limit",
    }
}

impl Held<'_> {
    /// A concentration of it: in ppm, which is how limits of vapours are written, and counted at 25 °C as they are.
    #[must_use]
    pub fn ppm(&self, mg_per_m3: f64) -> f64 {
        Concentration::MgPerM3(mg_per_m3).ppm(self.molar_mass)
    }

    /// The worst of its limits, in a sentence's part.
    #[must_use]
    pub fn words(&self) -> String {
        let name = &self.substance.name;
        if self.substance.lowest_feasible.is_some() {
            return format!("{name}: no amount in the air is called safe (NIOSH)");
        }
        let part = |held: f64, limit: Option<Limited>| limit.map(|limit| (held / limit.mg_per_m3, held, limit));
        let kinds = [
            (part(self.mean, self.mean_limit), "over 8 h"),
            (part(self.short, self.short_limit), "in the worst 15 min"),
            (part(self.peak, self.ceiling), "at its peak"),
        ];
        let worst =
            kinds.into_iter().filter_map(|(part, when)| part.map(|part| (part, when))).max_by(|one, other| one.0.0.total_cmp(&other.0.0));
        match worst {
            None => format!("{name}: {} ppm in the worst 15 min, for which no limit is known here", digits(self.ppm(self.short))),
            Some(((_, held, limit), when)) => format!(
                "{name}: {} ppm {when}, of {} ppm allowed ({})",
                digits(self.ppm(held)),
                digits(self.ppm(limit.mg_per_m3)),
                whose(limit.regime)
            ),
        }
    }
}

impl Exposure<'_> {
    /// The substance that is nearest to its limit, or farthest beyond.
    #[must_use]
    pub fn worst(&self) -> Option<&Held<'_>> {
        self.held.iter().max_by(|one, other| one.of_limit.total_cmp(&other.of_limit))
    }

    /// Whether the air at the work holds more of what burns than is safe.
    #[must_use]
    pub fn is_near_burning(&self) -> bool {
        self.of_flammable > SAFE_SHARE
    }

    /// In a sentence: what one breathes, the way out, and how near it is to burning where that is too near.
    #[must_use]
    pub fn words(&self, units: System) -> String {
        let Some(worst) = self.worst() else { return "nothing evaporates".to_owned() };
        let mut words = worst.words();
        if self.of_limit > 1.0 {
            let air =
                self.changes_needed.map(|changes| format!("needs {} air changes an hour to count on", digits(changes.base() * 3600.0)));
            let less = self.amount_allowed.map(|amount| format!("take at most {}", show(amount, units)));
            let none_safe = worst.substance.lowest_feasible.is_some();
            let last = if none_safe { "take another fluid" } else { "do it outdoors" };
            let ways: Vec<String> = air.into_iter().chain(less).chain([last.to_owned()]).collect();
            words = format!("{words}; {}", ways.join(", or "));
        }
        if self.is_near_burning() {
            words = format!("{words}; its vapour reaches {:.0} % of what burns", self.of_flammable * 100.0);
        }
        words
    }
}
