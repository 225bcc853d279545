//! Faults of substances.

use units::Quantity;

use super::Check;
use crate::Substance;
use crate::substance::is_cas;

impl Check<'_> {
    pub(super) fn substances(&mut self) {
        for substance in self.data.substances.values() {
            let place = format!("substance `{}`", substance.key);
            if let Some(cas) = &substance.cas {
                self.need(&place, is_cas(cas), &format!("`{cas}` is no registry number: its check digit or its shape is wrong"));
            }
            for key in substance.groups.iter().filter(|key| !self.data.storage_groups.contains_key(*key)) {
                self.dangling(&place, "storage group", key);
            }
            self.substance_sources(&place, substance);
            self.substance_order(&place, substance);
        }
    }

    fn substance_sources(&mut self, place: &str, substance: &Substance) {
        let optional = [
            substance.molar_mass_g_per_mol.map(|part| part.source),
            substance.density.map(|part| part.source),
            substance.boiling.map(|part| part.source),
            substance.antoine.map(|part| part.source),
            substance.in_water.map(|part| part.source),
            substance.heat_of_vaporisation_kj_per_mol.map(|part| part.source),
            substance.diffusion_mm2_per_s.map(|part| part.source),
            substance.flash.map(|part| part.source),
            substance.lower_flammable.map(|part| part.source),
            substance.upper_flammable.map(|part| part.source),
            substance.autoignition.map(|part| part.source),
            substance.iodine_value.map(|part| part.source),
            substance.lowest_feasible.map(|part| part.source),
            substance.idlh.map(|part| part.source),
            Some(substance.source),
        ];
        let listed = substance.limits.iter().map(|row| row.source);
        let listed = listed.chain(substance.toxicity.iter().map(|row| row.source));
        let listed = listed.chain(substance.specific_limits.iter().map(|row| row.source));
        for key in optional.into_iter().flatten().chain(listed) {
            self.source(place, key);
        }
    }

    fn substance_order(&mut self, place: &str, substance: &Substance) {
        if let (Some(lower), Some(upper)) = (substance.lower_flammable, substance.upper_flammable) {
            self.need(place, lower.value < upper.value, "its flammable limits are out of order");
        }
        if let (Some(flash), Some(boiling)) = (substance.flash, substance.boiling) {
            self.need(place, flash.value < boiling.value, "it flashes hotter than it boils");
        }
        if let Some(antoine) = substance.antoine {
            let falls = antoine.from < antoine.to && antoine.b > 0.0 && antoine.from.base() - 273.15 + antoine.c > 0.0;
            self.need(place, falls, "its vapour pressure does not rise with temperature");
        }
        self.need(place, substance.in_water.is_none_or(|part| part.a > 0.0 && part.b > 0.0), "water does not drive it out");
        for row in &substance.specific_limits {
            self.need(place, row.to.is_none_or(|to| row.from < to), "a specific limit is out of order");
        }
        let evaporates = substance.antoine.is_some();
        self.need(place, !evaporates || substance.molar_mass_g_per_mol.is_some(), "what evaporates needs its molar mass");
    }
}
