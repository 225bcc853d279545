//! Which precautions stand on a label: the most needed of each hazard, in turn, until six stand there.

use reference::hazard::HazardClass as H;

/// More than six precautionary statements nobody reads; the European rules ask for no more (Regulation (EC) No 1272/2008, Article 28).
pub const MOST_PRECAUTIONS: usize = 6;

/// What one hazard asks for, the most needed first.
struct Set {
    concerns: fn(H) -> bool,
    /// How many of its statements are taken before the other hazards have their next turn.
    at_a_time: usize,
    asks: &'static [&'static str],
}

/// The greater hazards first. After the statements that UN GHS Annex 3 gives each class; the choice among them is *common practice*.
const SETS: &[Set] = &[
    Set {
        concerns: |class| matches!(class, H::SkinCorr1 | H::SkinCorr1A | H::SkinCorr1B | H::SkinCorr1C),
        at_a_time: 2,
        asks: &["P280", "P305+P351+P338", "P303+P361+P353", "P310", "P260", "P405"],
    },
    Set {
        concerns: |class| matches!(class, H::AcuteTox1Inhalation | H::AcuteTox2Inhalation | H::AcuteTox3Inhalation),
        at_a_time: 2,
        asks: &["P304+P340", "P310", "P261", "P271", "P405"],
    },
    Set {
        concerns: |class| H::AcuteTox1Oral <= class && class <= H::AcuteTox3Oral,
        at_a_time: 2,
        asks: &["P301+P310", "P270", "P264", "P405"],
    },
    Set {
        concerns: |class| H::AcuteTox1Dermal <= class && class <= H::AcuteTox3Dermal,
        at_a_time: 2,
        asks: &["P280", "P302+P352", "P361+P364", "P310", "P405"],
    },
    Set { concerns: |class| class == H::AspTox1, at_a_time: 2, asks: &["P301+P310", "P331", "P405", "P501"] },
    Set {
        concerns: |class| matches!(class, H::Aerosol1 | H::Aerosol2 | H::Aerosol3),
        at_a_time: 1,
        asks: &["P210", "P251", "P410+P412", "P211"],
    },
    Set {
        concerns: |class| matches!(class, H::FlamLiq1 | H::FlamLiq2 | H::FlamLiq3 | H::FlamLiq4),
        at_a_time: 1,
        asks: &["P210", "P403+P235", "P233", "P370+P378", "P280", "P501"],
    },
    Set {
        concerns: |class| matches!(class, H::FlamGas1A | H::FlamGas1B | H::FlamGas2),
        at_a_time: 1,
        asks: &["P210", "P377", "P381", "P403"],
    },
    Set {
        concerns: |class| H::OxLiq1 <= class && class <= H::OrgPeroxEf || class == H::OxGas1,
        at_a_time: 1,
        asks: &["P220", "P210", "P280", "P370+P378"],
    },
    Set {
        concerns: |class| H::Muta1A <= class && class <= H::Repr2 || matches!(class, H::StotSe1 | H::StotSe2 | H::StotRe1),
        at_a_time: 1,
        asks: &["P201", "P280", "P308+P313", "P202", "P405"],
    },
    Set { concerns: |class| class == H::EyeDam1, at_a_time: 1, asks: &["P280", "P305+P351+P338", "P310"] },
    Set { concerns: |class| class == H::RespSens1, at_a_time: 1, asks: &["P261", "P342+P311", "P304+P340"] },
    Set {
        concerns: |class| matches!(class, H::SkinSens1 | H::SkinSens1A | H::SkinSens1B),
        at_a_time: 1,
        asks: &["P280", "P333+P313", "P302+P352", "P261", "P272"],
    },
    Set { concerns: |class| class == H::EyeIrrit2, at_a_time: 1, asks: &["P305+P351+P338", "P280", "P264"] },
    Set { concerns: |class| class == H::SkinIrrit2, at_a_time: 1, asks: &["P302+P352", "P280", "P264"] },
    Set {
        concerns: |class| matches!(class, H::StotSe3Irritation | H::StotSe3Narcotic | H::AcuteTox4Inhalation),
        at_a_time: 1,
        asks: &["P271", "P261", "P304+P340"],
    },
    Set { concerns: |class| class == H::StotRe2, at_a_time: 1, asks: &["P260", "P314"] },
    Set { concerns: |class| class == H::Lact, at_a_time: 1, asks: &["P263", "P201", "P308+P313"] },
    Set { concerns: |class| class == H::AcuteTox4Oral, at_a_time: 1, asks: &["P301+P312", "P270", "P264"] },
    Set { concerns: |class| class == H::AcuteTox4Dermal, at_a_time: 1, asks: &["P302+P352", "P280"] },
    Set {
        concerns: |class| matches!(class, H::AquaticAcute1 | H::AquaticChronic1 | H::AquaticChronic2),
        at_a_time: 1,
        asks: &["P273", "P391", "P501"],
    },
    Set {
        concerns: |class| matches!(class, H::AquaticAcute2 | H::AquaticAcute3 | H::AquaticChronic3 | H::AquaticChronic4),
        at_a_time: 1,
        asks: &["P273", "P501"],
    },
    Set { concerns: |class| class == H::PressGas, at_a_time: 1, asks: &["P410+P403"] },
];

/// Asked only of what does nothing worse.
const EATS_METAL: [&str; 2] = ["P234", "P390"];

/// The codes to print, in their own order.
pub(super) fn precautions(classes: &[H]) -> Vec<&'static str> {
    let mut asked: Vec<(usize, &str)> = Vec::new();
    for set in SETS.iter().filter(|set| classes.iter().any(|class| (set.concerns)(*class))) {
        asked.extend(set.asks.iter().enumerate().map(|(place, code)| (place / set.at_a_time, *code)));
    }
    asked.sort_by_key(|(turn, _)| *turn);
    let mut chosen: Vec<&str> = Vec::new();
    for (_, code) in asked {
        if chosen.len() < MOST_PRECAUTIONS && !chosen.iter().any(|known| says(known, code)) {
            // A statement that says more takes the place of one that says less.
            chosen.retain(|known| !says(code, known));
            chosen.push(code);
        }
    }
    if chosen.is_empty() && classes.contains(&H::MetCorr1) {
        chosen.extend(EATS_METAL);
    }
    chosen.sort_unstable();
    chosen
}

/// Whether one statement holds all that another says: `P301+P310` holds `P310`.
fn says(one: &str, other: &str) -> bool {
    other.split('+').all(|code| one.split('+').any(|held| held == code))
}

/// Every code that may be chosen.
#[cfg(test)]
pub(super) fn all_codes() -> impl Iterator<Item = &'static str> {
    SETS.iter().flat_map(|set| set.asks.iter().copied()).chain(EATS_METAL)
}

#[cfg(test)]
mod tests {
    use super::*;
    use reference::Reference;

    #[test]
    fn every_code_that_may_be_chosen_has_its_text() {
        for code in all_codes() {
            assert!(Reference::embedded().statement(code).is_some(), "{code}");
        }
    }

    #[test]
    fn every_class_with_a_signal_word_asks_for_something_or_is_no_liquid_of_a_shop() {
        for class in H::ALL.iter().filter(|class| **class >= H::MetCorr1) {
            assert!(!precautions(&[*class]).is_empty(), "{class}");
        }
    }

    #[test]
    fn six_are_the_most_and_the_longer_statement_holds_the_shorter() {
        let many = precautions(H::ALL);
        assert_eq!(many.len(), MOST_PRECAUTIONS);
        let acid_poison = precautions(&[H::SkinCorr1, H::AcuteTox3Oral]);
        assert!(acid_poison.contains(&"P301+P310") && !acid_poison.contains(&"P310"), "{acid_poison:?}");
    }
}
