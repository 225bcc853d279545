//! The engine as a whole: what must hold for any mixture.

use proptest::prelude::*;
use reference::Reference;
use units::Range;

use super::{Finding, classify, kind};
use crate::label::{Mixture, Part, Rules};

fn of_rules(findings: &[Finding], rules: Rules) -> Vec<(String, reference::hazard::HazardClass)> {
    findings.iter().filter(|finding| finding.rules == Some(rules)).map(|finding| (kind(finding.class), finding.class)).collect()
}

/// One to five substances of the data, by place, with shares that leave room for water.
fn drawn() -> impl Strategy<Value = Vec<(usize, f64)>> {
    prop::collection::vec((0..Reference::embedded().substances.len(), 0.0005..1.0_f64), 1..6)
}

fn mixture(drawn: &[(usize, f64)]) -> Mixture<'static> {
    let all: f64 = drawn.iter().map(|(_, share)| share).sum::<f64>().max(1.0);
    let part = |(place, share): &(usize, f64)| {
        let (_, substance) = Reference::embedded().substances.get_index(*place).expect("the place lies within the table");
        Part { substance, share: Range::exact(share / all) }
    };
    Mixture::new(drawn.iter().map(part).collect())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// The pH alone may add a class when water is added, because it is given and not worked; here none is given.
    #[test]
    fn water_never_makes_it_worse(drawn in drawn(), left in 0.001..1.0_f64) {
        let mixture = mixture(&drawn);
        let (before, after) = (classify(&mixture), classify(&mixture.diluted(left)));
        for rules in Rules::ALL {
            let before = of_rules(&before, rules);
            for (kind, class) in of_rules(&after, rules) {
                let no_worse = before.iter().any(|(known, was)| *known == kind && *was <= class);
                prop_assert!(no_worse, "{class} by {rules} in {left} of {before:?}");
            }
        }
    }

    #[test]
    fn the_order_of_the_parts_does_not_matter(drawn in drawn()) {
        let mixture = mixture(&drawn);
        let mut turned = mixture.clone();
        turned.parts.reverse();
        for rules in Rules::ALL {
            prop_assert_eq!(of_rules(&classify(&mixture), rules), of_rules(&classify(&turned), rules));
        }
    }

    #[test]
    fn more_of_a_substance_is_never_better(drawn in drawn(), place in 0..5_usize) {
        // The water makes room, so the other shares stay.
        let mut more = mixture(&drawn).diluted(0.5);
        let before = classify(&more);
        let place = place % more.parts.len().max(1);
        if let Some(part) = more.parts.get_mut(place) {
            part.share = part.share.map(|share| share * 2.0);
        }
        let after = classify(&more);
        for rules in Rules::ALL {
            let after = of_rules(&after, rules);
            // The flash point is left out: an oil that burns badly keeps the vapour of what burns well down.
            for (kind, class) in of_rules(&before, rules).into_iter().filter(|(kind, _)| kind != "Flam. Liq.") {
                prop_assert!(after.iter().any(|(known, is)| *known == kind && *is <= class), "{class} by {rules} went");
            }
        }
    }
}
