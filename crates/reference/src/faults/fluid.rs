//! Faults of fluids.

use super::Check;
use crate::{Fluid, Form, Trait};

impl Check<'_> {
    pub(super) fn fluids(&mut self) {
        for fluid in self.data.fluids.values() {
            let place = format!("fluid `{}`", fluid.key);
            self.need(&place, !fluid.classes.is_empty(), "it belongs to no class");
            self.classes(&place, &fluid.classes);
            for name in fluid.chemistry.care.iter().chain(&fluid.chemistry.attacks) {
                self.material(&place, name);
            }
            if !self.data.storage_groups.contains_key(&fluid.hazards.storage) {
                self.dangling(&place, "storage group", &fluid.hazards.storage);
            }
            for code in &fluid.hazards.statements {
                self.need(&place, is_statement(code), &format!("`{code}` is not a hazard statement code"));
            }
            self.contents(&place, fluid);
            self.fluid_sources(&place, fluid);
            self.completeness(&place, fluid);
            self.packs(&place, fluid);
        }
    }

    fn contents(&mut self, place: &str, fluid: &Fluid) {
        for row in &fluid.contents {
            self.source(place, row.source);
            if self.data.substance(&row.substance).is_none() {
                self.dangling(place, "substance", &row.substance);
            }
        }
        let least: f64 = fluid.contents.iter().map(|row| row.share.low).sum();
        self.need(place, least <= 1.0 + 1e-9, "its contents add up to more than the whole");
        let sound = fluid.contents.iter().all(|row| 0.0 <= row.share.low && row.share.high <= 1.0);
        self.need(place, sound, "a share lies outside 0 to 100 %");
    }

    fn fluid_sources(&mut self, place: &str, fluid: &Fluid) {
        let optional = [
            fluid.barred.as_ref().map(|part| part.source),
            fluid.oil.as_ref().map(|part| part.source),
            fluid.grease.as_ref().map(|part| part.source),
            fluid.bond.as_ref().map(|part| part.source),
            fluid.hottest.map(|part| part.source),
            fluid.flash.map(|part| part.source),
            fluid.vapour_pressure.map(|part| part.source),
            fluid.dilution.map(|part| part.source),
        ];
        let always = [fluid.density.source, fluid.chemistry.source, fluid.hazards.source, fluid.shelf.source];
        for key in optional.into_iter().flatten().chain(always) {
            self.source(place, key);
        }
    }

    fn completeness(&mut self, place: &str, fluid: &Fluid) {
        if let Some(oil) = &fluid.oil {
            let thinner = oil.viscosity_100.is_none_or(|hot| hot < oil.viscosity_40);
            self.need(place, thinner, "it is not thinner at 100 °C than at 40 °C");
            self.need(place, oil.viscosity_100.is_some() || oil.index.is_some(), "it has neither a viscosity at 100 °C nor an index");
        }
        if let Some(grease) = &fluid.grease {
            self.need(place, (-2..=6).contains(&grease.consistency), "its consistency number lies outside 000 to 6");
            self.need(place, grease.coldest < grease.hottest, "its coldest use is not colder than its hottest");
            if !self.data.thickeners.contains_key(&grease.thickener) {
                self.dangling(place, "thickener", &grease.thickener);
            }
        }
        if let Some(bond) = &fluid.bond {
            self.need(place, bond.handle_after <= bond.load_after, "it may be loaded before it may be handled");
        }
        match fluid.form {
            Form::Oil => self.need(place, fluid.oil.is_some(), "an oil needs its viscosity"),
            Form::Grease => self.need(place, fluid.oil.is_some() && fluid.grease.is_some(), "a grease needs consistency and base oil"),
            _ => {}
        }
        if fluid.traits.contains(&Trait::Anaerobic) {
            self.need(place, fluid.bond.is_some(), "an anaerobic product needs its bond");
        }
        self.need(place, fluid.shelf.opened <= fluid.shelf.closed, "it keeps longer opened than closed");
    }

    fn packs(&mut self, place: &str, fluid: &Fluid) {
        let bought = fluid.barred.is_none() && !fluid.always_there;
        self.need(place, fluid.packs.is_empty() != bought, "packs are for what is bought, and what is bought needs one");
        for pack in &fluid.packs {
            self.source(place, pack.source);
            self.need(place, pack.price > 0.0, "a pack costs nothing");
            self.need(place, (2015..2100).contains(&pack.year), "the year of a price cannot be right");
            if self.data.currency(&pack.currency).is_none() {
                self.dangling(place, "currency", &pack.currency);
            }
        }
    }
}

/// `H225`, `H360FD`, `EUH202`.
fn is_statement(code: &str) -> bool {
    let Some(rest) = code.strip_prefix("EUH").or_else(|| code.strip_prefix('H')) else { return false };
    let (digits, letters) = rest.split_at(rest.len().min(3));
    digits.len() == 3 && digits.bytes().all(|b| b.is_ascii_digit()) && letters.bytes().all(|b| b.is_ascii_alphabetic())
}
