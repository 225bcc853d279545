//! The maker's word about a point: it stands above what is computed, and is still checked.

use std::borrow::Cow;

use reference::Reference;
use shop::Maker;

use super::common::ONE_GRADE;
use crate::demand::{Demand, GRADE_BAND, Test, celsius};
use crate::verdict::Grade;

/// What is to be said where the maker names a form of lubricant that harms or does not suit the place: it is obeyed and flagged.
pub(super) fn against(demands: &[Demand], maker: &Maker, reference: &Reference) -> Option<(Cow<'static, str>, &'static str)> {
    let named = |fluid: &&reference::Fluid| maker.fluids.iter().any(|word| fluid.is(word));
    let form = demands.iter().find(|demand| matches!(demand.test, Test::Form { .. }))?;
    let mut fluids = reference.fluids.values().filter(named);
    let refused = fluids.any(|fluid| form.judge(fluid, reference).is_some_and(|judged| judged.grade == Grade::Harmful));
    refused.then(|| {
        let text =
            format!("The maker's word is followed against a rule of the trade: {}. Make sure that the maker means this fitting.", form.why);
        (text.into(), form.source)
    })
}

/// The maker's word stands above the computed demands for class, form and viscosity; prohibitions stay.
pub(super) fn overrule(demands: &mut Vec<Demand>, maker: &Maker, reference: &Reference) {
    let page = maker.page.as_deref().unwrap_or("the maker's instruction");
    if !maker.fluids.is_empty() {
        demands.retain(|demand| !matches!(demand.test, Test::Class { .. } | Test::Form { .. } | Test::With { .. }));
        let named: Vec<String> = maker.fluids.iter().map(|word| reference.name_of(word)).collect();
        let right = maker.fluids.iter().map(|word| Cow::Owned(word.clone())).collect();
        let why = format!("the maker says {} ({page}); that stands above what is computed here", named.join(" or "));
        demands.insert(
            0,
            Demand { what: "kind of fluid", test: Test::Class { right, will_do: Vec::new() }, why: why.into(), source: "maker" },
        );
    }
    if let Some(nu) = maker.viscosity {
        demands.retain(|demand| !matches!(demand.test, Test::NotThinner { .. } | Test::NotThicker { .. }));
        let at = celsius(40.0);
        let (low, high) = (nu / GRADE_BAND, nu * GRADE_BAND);
        let why = || Cow::Owned(format!("the maker says so ({page}); that stands above what is computed here"));
        let thick = Test::NotThinner { at, right: low, will_do: low / ONE_GRADE, else_grade: Grade::Wrong };
        let thin = Test::NotThicker { at, right: high, will_do: high * ONE_GRADE, else_grade: Grade::Wrong };
        demands.push(Demand { what: "thick enough", test: thick, why: why(), source: "maker" });
        demands.push(Demand { what: "thin enough", test: thin, why: why(), source: "maker" });
    }
}
