//! Faults of the other tables.

use std::collections::HashSet;

use super::Check;

impl Check<'_> {
    /// Tables whose rows name nothing but their source.
    pub(super) fn bare_tables(&mut self) {
        let data = self.data;
        let mut rows = Vec::new();
        rows.extend(data.classes.values().map(|row| ("class", &row.key, row.source)));
        rows.extend(data.thickeners.values().map(|row| ("thickener", &row.key, row.source)));
        rows.extend(data.storage_groups.values().map(|row| ("storage group", &row.key, row.source)));
        rows.extend(data.statements.values().map(|row| ("statement", &row.code, row.source)));
        rows.extend(data.currencies.values().map(|row| ("currency", &row.code, row.source)));
        rows.extend(data.climates.values().map(|row| ("climate", &row.key, row.source)));
        rows.extend(data.consequences.values().map(|row| ("consequence", &row.key, row.source)));
        rows.extend(data.frequencies.values().map(|row| ("frequency", &row.key, row.source)));
        rows.extend(data.refusals.values().map(|row| ("refusal", &row.key, row.source)));
        for (table, key, source) in rows {
            self.source(&format!("{table} `{key}`"), source);
        }
        for climate in data.climates.values() {
            let ordered = climate.coldest < climate.typical && climate.typical < climate.hottest;
            self.need(&format!("climate `{}`", climate.key), ordered, "its temperatures are out of order");
            let months = climate.swing_by_month.iter().all(|swing| *swing > 0.0);
            let damp = climate.humidity_by_month.iter().all(|percent| (1.0..=100.0).contains(percent));
            self.need(&format!("climate `{}`", climate.key), months && damp, "a month of it cannot be");
        }
    }

    pub(super) fn materials(&mut self) {
        for material in self.data.materials.values() {
            let place = format!("material `{}`", material.key);
            self.source(&place, material.source);
            if let Some(solid) = &material.solid {
                self.source(&place, solid.source);
            }
        }
        for row in self.data.bearing_materials.values() {
            let place = format!("bearing material `{}`", row.key);
            self.source(&place, row.source);
            self.material(&place, &row.material);
        }
    }

    pub(super) fn pairs(&mut self) {
        for row in &self.data.thickener_pairs {
            let place = format!("thickener pair {:?}", row.pair);
            self.source(&place, row.source);
            for key in row.pair.iter().filter(|key| !self.data.thickeners.contains_key(*key)) {
                self.dangling(&place, "thickener", key);
            }
        }
    }

    pub(super) fn cutting(&mut self) {
        let data = self.data;
        let mut seen = HashSet::new();
        for row in &data.cuts {
            let place = format!("cut `{}` {}", row.material, row.operation);
            self.material(&place, &row.material);
            self.classes(&place, &row.ranked);
            self.source(&place, row.source);
            self.need(&place, seen.insert((&row.material, row.operation)), "it stands there twice");
        }
        let mut rows = Vec::new();
        rows.extend(data.cutting_powers.values().map(|row| (&row.material, row.source)));
        rows.extend(data.drill_factors.values().map(|row| (&row.material, row.source)));
        rows.extend(data.tap_pressures.values().map(|row| (&row.material, row.source)));
        rows.extend(data.retaining_metals.values().map(|row| (&row.material, row.source)));
        for (material, source) in rows {
            self.material("a cutting or retaining value", material);
            self.source(&format!("a cutting or retaining value of `{material}`"), source);
        }
        let powers = data.cutting_powers.values().map(|row| (&row.material, row.joules_per_mm3));
        for (name, [low, likely, high]) in powers.chain(data.tap_fluids.values().map(|row| (&row.class, row.factor))) {
            self.need(name, 0.0 < low && low <= likely && likely <= high, "low, likely and high are out of order");
        }
        for row in data.tap_fluids.values() {
            self.classes("a tapping multiplier", std::slice::from_ref(&row.class));
            self.source("a tapping multiplier", row.source);
        }
    }

    pub(super) fn surfaces(&mut self) {
        for row in self.data.cleanings.values() {
            let place = format!("soil `{}`", row.soil);
            self.classes(&place, &row.first);
            self.classes(&place, &row.second);
            self.source(&place, row.source);
            self.need(&place, !row.first.is_empty(), "nothing takes it off");
        }
        for row in self.data.finishes.values() {
            let place = format!("finish `{}`", row.class);
            self.classes(&place, std::slice::from_ref(&row.class));
            self.source(&place, row.source);
            if let Some(spray) = row.salt_spray {
                self.source(&place, spray.source);
            }
        }
        for row in self.data.finish_rules.values() {
            let place = format!("finishing rule `{}`", row.key);
            self.classes(&place, &row.ranked);
            self.classes(&place, &row.never);
            self.source(&place, row.source);
            self.need(&place, row.ranked.iter().all(|class| !row.never.contains(class)), "it both ranks and bars a class");
        }
    }

    pub(super) fn joints(&mut self) {
        for row in &self.data.sealings {
            let place = format!("sealing of {} in a {:?} thread", row.medium, row.thread);
            self.classes(&place, &row.ranked);
            self.source(&place, row.source);
        }
        for row in self.data.lockings.values() {
            let place = format!("locking `{}`", row.key);
            self.classes(&place, &row.ranked);
            self.source(&place, row.source);
        }
    }

    pub(super) fn templates(&mut self) {
        for template in self.data.templates.values() {
            let place = format!("template `{}`", template.name);
            self.source(&place, template.source);
            for point in &template.points {
                let place = format!("{place}, {}", point.name);
                self.need(&place, point.count > 0, "there is none of it");
                for name in &point.touches {
                    self.material(&place, name);
                }
                if let Some(source) = point.source {
                    self.source(&place, source);
                }
            }
        }
    }
}
