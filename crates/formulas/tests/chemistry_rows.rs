//! Every row of the published check values for parts that cool and baths that warm, within its own tolerance:
//! |x − expected| ≤ abs_tol + rel_tol·|expected|. Where each value comes from stands in the `source` column of its file.

#![expect(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on fails")]

use std::collections::HashMap;
use std::path::Path;

use formulas::Silent;
use formulas::quench::{
    Charge, HotMetal, Liquid, Lump, bath_after, biot, heat_up_time, temperature_after, time_constant, time_to, volume_for_rise,
};
use formulas::solid_area::{Solid, surface_area, volume};
use units::{Length, Mass, MassDensity, Power, Temperature, TemperatureDifference, Time, Volume};
use uom::si::length::millimeter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;
use uom::si::volume::liter;

struct Row(HashMap<String, String>);

impl Row {
    fn text(&self, column: &str) -> &str {
        self.0.get(column).unwrap_or_else(|| panic!("no column {column}"))
    }
    fn number(&self, column: &str) -> f64 {
        self.text(column).parse().unwrap_or_else(|_| panic!("{}: column {column} is no number", self.text("id")))
    }
    fn mm(&self, column: &str) -> Length {
        Length::new::<millimeter>(self.number(column))
    }
    fn celsius(&self, column: &str) -> Temperature {
        Temperature::new::<degree_celsius>(self.number(column))
    }
    fn density(&self, column: &str) -> MassDensity {
        MassDensity::new::<kilogram_per_cubic_meter>(self.number(column))
    }
    fn litres(&self, column: &str) -> Volume {
        Volume::new::<liter>(self.number(column))
    }
    /// A tolerance whose column is missing or blank counts as nothing.
    fn tolerance(&self, column: &str) -> f64 {
        self.0.get(column).filter(|text| !text.is_empty()).map_or(0.0, |text| text.parse().unwrap())
    }
    fn solid(&self) -> Solid {
        let [a, b, c] = ["dim_a_mm", "dim_b_mm", "dim_c_mm"];
        match self.text("shape") {
            "round bar" => Solid::Cylinder { diameter: self.mm(a), length: self.mm(b) },
            "flat bar" => Solid::Block { length: self.mm(b), width: self.mm(c), height: self.mm(a) },
            "ball" => Solid::Sphere { diameter: self.mm(a) },
            other => panic!("no such shape: {other}"),
        }
    }
    fn charge(&self) -> Charge {
        Charge {
            mass: Mass::new::<kilogram>(self.number("part_mass_kg")),
            metal: HotMetal::Constant(self.number("part_specific_heat_J_kgK")),
            at: self.celsius("part_start_C"),
        }
    }
}

/// Runs every row of a file, and fails with all rows that are off.
fn every_row(file: &str, find: impl Fn(&Row) -> f64) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/published").join(file);
    let rows: Vec<Row> = csv::Reader::from_path(path).unwrap().deserialize().map(|row| Row(row.unwrap())).collect();
    assert!(rows.len() >= 30, "{file} holds too few rows to be the right file");
    let wrong: Vec<String> = rows
        .iter()
        .filter_map(|row| {
            let (found, expected) = (find(row), row.number("expected"));
            let allowed = row.tolerance("abs_tol") + row.tolerance("rel_tol") * expected.abs();
            let off = (found - expected).abs();
            // A value that is not a number must fail too.
            (off.is_nan() || off > allowed).then(|| format!("{}: {found} instead of {expected} ± {allowed}", row.text("id")))
        })
        .collect();
    assert!(wrong.is_empty(), "{} rows of {file} are off:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn quench_file() {
    every_row("quench.csv", |row| {
        let solid = row.solid();
        let part = Lump {
            volume: volume(&mut Silent, &solid).unwrap(),
            surface: surface_area(&mut Silent, &solid).unwrap(),
            density: row.density("density_kg_m3"),
            specific_heat_j_per_kg_k: row.number("specific_heat_J_kgK"),
            conductivity_w_per_m_k: row.number("conductivity_W_mK"),
            film_w_per_m2_k: row.number("film_coefficient_W_m2K"),
            start: row.celsius("start_C"),
            around: row.celsius("bath_C"),
        };
        match row.text("quantity") {
            "biot_number" => biot(&mut Silent, &part).unwrap(),
            "time_constant" => time_constant(&mut Silent, &part).unwrap().get::<second>(),
            "temperature" => {
                let after = Time::new::<second>(row.number("t_s"));
                temperature_after(&mut Silent, &part, after).unwrap().get::<degree_celsius>()
            }
            "time_to_target" => time_to(&mut Silent, &part, row.celsius("target_C")).unwrap().get::<second>(),
            other => panic!("no such quantity: {other}"),
        }
    });
}

/// The hub temperatures worked together with these stand in `thermal.csv`, which the tests of joints read.
#[test]
fn quench_bath_file() {
    every_row("quench_bath.csv", |row| {
        let liquid =
            Liquid { density: row.density("fluid_density_kg_m3"), specific_heat_kj_per_kg_k: row.number("fluid_specific_heat_kJ_kgK") };
        let start = row.celsius("bath_start_C");
        match row.text("quantity") {
            "bath_volume_for_rise" => {
                let rise = TemperatureDifference::new::<kelvin>(row.number("allowed_rise_K"));
                volume_for_rise(&mut Silent, &row.charge(), &liquid, start, rise).unwrap().get::<liter>()
            }
            "bath_temperature_rise" => {
                let end = bath_after(&mut Silent, &row.charge(), &liquid, row.litres("bath_volume_L"), start).unwrap();
                end.get::<degree_celsius>() - row.number("bath_start_C")
            }
            "heat_up_time" => {
                let (target, heater) = (row.celsius("target_C"), Power::new::<watt>(row.number("heater_W")));
                let volume = row.litres("bath_volume_L");
                heat_up_time(&mut Silent, &liquid, volume, (start, target), heater, row.number("loss_W_K")).unwrap().get::<second>()
            }
            other => panic!("no such quantity: {other}"),
        }
    });
}
