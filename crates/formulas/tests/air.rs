//! The air of a room and its vapours: every row of the check values, worked cases, and laws.

#![expect(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on fails")]

use std::collections::HashMap;
use std::path::Path;

use formulas::Silent;
use formulas::flammability::{
    Burning, Drying, drying, flammable_category, flash_at_sea_level, flash_point, lower_limit_at, mixture_limit, nfpa_class,
};
use formulas::room_air::{Air, History, Pulse, after_source, near_field};
use formulas::vapour::{Antoine, Component, blend, mass_of_ppm, ppm_of_mass};
use proptest::prelude::*;
use units::{Frequency, Length, Pressure, Range, Temperature, Time, Velocity, Volume};
use uom::si::frequency::cycle_per_hour;
use uom::si::length::meter;
use uom::si::pressure::kilopascal;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour;
use uom::si::velocity::meter_per_second;
use uom::si::volume::cubic_meter;

type Row = HashMap<String, String>;

fn rows(file: &str) -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/published").join(file);
    csv::Reader::from_path(path).unwrap().deserialize().map(Result::unwrap).collect()
}

fn number(row: &Row, column: &str) -> f64 {
    row.get(column).filter(|text| !text.is_empty()).map_or(0.0, |text| text.parse().unwrap())
}

fn off(row: &Row, found: f64) -> Option<String> {
    let expected = number(row, "expected");
    let allowed = number(row, "abs_tol") + number(row, "rel_tol") * expected.abs();
    let wrong = (found - expected).abs().partial_cmp(&allowed).is_none_or(std::cmp::Ordering::is_gt);
    wrong.then(|| format!("{}: {found} instead of {expected} ± {allowed}", row["id"]))
}

fn kpa(p: f64) -> Pressure {
    Pressure::new::<kilopascal>(p)
}

fn celsius(t: f64) -> Temperature {
    Temperature::new::<degree_celsius>(t)
}

/// Every row of the mixed room solved as a differential equation (`SciPy` 1.17.1).
#[test]
fn evaporation_room_file() {
    let rows = rows("evaporation_room.csv");
    assert!(rows.len() > 100);
    let wrong: Vec<String> = rows
        .iter()
        .filter_map(|row| {
            let pulse = Pulse {
                starts: 0.0,
                lasts: number(row, "source_on_h"),
                rate: number(row, "emission_mg_per_h"),
                fades: number(row, "decay_per_h"),
            };
            let air = History {
                volume: number(row, "room_volume_m3"),
                changes: number(row, "air_changes_per_h"),
                before: number(row, "initial_mg_m3"),
                pulses: vec![pulse],
            };
            let found = match row["quantity"].as_str() {
                "concentration" => air.held(number(row, "t_h")),
                "average_8h" => air.mean(0.0, 8.0),
                "peak_15min_average_within_8h" => air.worst_mean(0.25, 8.0),
                other => panic!("no such quantity: {other}"),
            };
            off(row, found)
        })
        .collect();
    assert!(wrong.is_empty(), "{} rows are off:\n{}", wrong.len(), wrong.join("\n"));
}

/// Every row of Le Chatelier's rule as a library (`chemicals` 1.5.2) works it.
#[test]
fn mixture_limits_file() {
    let rows = rows("mixture_lfl.csv");
    assert!(rows.len() > 30);
    let wrong: Vec<String> = rows
        .iter()
        .filter_map(|row| {
            let parts: Vec<(f64, f64)> = (1..=4)
                .map(|i| (number(row, &format!("mole_fraction{i}")), number(row, &format!("limit{i}_vol_pct"))))
                .filter(|(share, _)| *share > 0.0)
                .collect();
            off(row, mixture_limit(&mut Silent, &parts).unwrap())
        })
        .collect();
    assert!(wrong.is_empty(), "{} rows are off:\n{}", wrong.len(), wrong.join("\n"));
}

/// Parts per million and milligrams in a cubic metre (`chemicals` 1.5.2): at 25 °C but for the last, at 20 °C.
#[test]
fn parts_per_million() {
    let into_mass = [
        (20.0, 92.138, 25.0, 75.3213976),
        (50.0, 84.933, 25.0, 173.576903),
        (25.0, 17.031, 25.0, 17.4026558),
        (50.0, 92.138, 20.0, 191.51522),
    ];
    for (ppm, molar, at, expected) in into_mass {
        let found = mass_of_ppm(&mut Silent, ppm, molar, celsius(at), kpa(101.325)).unwrap();
        assert!((found - expected).abs() < 1e-3 * expected, "{ppm} ppm: {found}");
        let back = ppm_of_mass(&mut Silent, found, molar, celsius(at), kpa(101.325)).unwrap();
        assert!((back - ppm).abs() < 1e-9 * ppm);
    }
    for (mass, molar, expected) in [(594.0, 58.079, 250.218061), (180.0, 86.175, 51.1024574), (1050.0, 128.255, 200.293586)] {
        let found = ppm_of_mass(&mut Silent, mass, molar, celsius(25.0), kpa(101.325)).unwrap();
        assert!((found - expected).abs() < 1e-3 * expected, "{mass} mg/m³: {found}");
    }
}

/// Isopropanol's flash point from its limit and vapour pressure: 9.2 °C (published: 12 °C); 5 % of hexane in decane flashes far colder.
#[test]
fn flash_points() {
    // Coefficients from memory of handbooks' tables, in kPa.
    let isopropanol = Antoine { a: 6.8661, b: 1360.183, c: 197.593, from: 0.0, to: 100.0 };
    let of = |parts: &[Burning]| flash_point(&mut Silent, parts, kpa(101.325)).unwrap().get::<degree_celsius>();
    let alone = of(&[Burning { mole_share: 1.0, antoine: isopropanol, lower_limit: 2.0 }]);
    assert!((alone - 12.0).abs() < 7.0, "{alone}");
    let decane = Antoine { a: 6.07, b: 1501.27, c: 194.48, from: 20.0, to: 200.0 };
    let hexane = Antoine { a: 6.0026, b: 1171.53, c: 224.366, from: -25.0, to: 92.0 };
    let part = |mass_share, molar_mass_g| Component { mass_share, molar_mass_g, pressure: kpa(1.0) };
    let shares = blend(&[part(0.05, 86.18), part(0.95, 142.28)]).unwrap();
    let pure = of(&[Burning { mole_share: 1.0, antoine: decane, lower_limit: 0.8 }]);
    let splashed = of(&[
        Burning { mole_share: shares[0].mole_share, antoine: hexane, lower_limit: 1.1 },
        Burning { mole_share: shares[1].mole_share, antoine: decane, lower_limit: 0.8 },
    ]);
    assert!((pure - 48.0).abs() < 5.0, "{pure}");
    assert!((splashed - 15.0).abs() < 5.0, "{splashed}");
}

/// Classes at their edges (UN GHS chapter 2.6; NFPA 30), Zabetakis' slope, the correction of ASTM D93.
#[test]
fn classes_of_fire() {
    let categories = [(22.9, Some(2)), (23.0, Some(3)), (60.0, Some(3)), (60.1, Some(4)), (93.0, Some(4)), (93.1, None)];
    for (flash, category) in categories {
        assert_eq!(flammable_category(celsius(flash), Some(celsius(80.0))), category, "{flash}");
    }
    assert_eq!(flammable_category(celsius(-45.0), Some(celsius(34.6))), Some(1));
    let classes =
        [(-18.0, 56.0, "IB"), (-45.0, 34.6, "IA"), (30.0, 140.0, "IC"), (45.0, 160.0, "II"), (70.0, 180.0, "IIIA"), (193.0, 400.0, "IIIB")];
    for (flash, boils, class) in classes {
        assert_eq!(nfpa_class(celsius(flash), Some(celsius(boils))), class);
    }
    let cold = lower_limit_at(&mut Silent, 2.5, celsius(25.0)).unwrap();
    assert!((cold - 2.5).abs() < 1e-12 && lower_limit_at(&mut Silent, 2.5, celsius(100.0)).unwrap() < cold);
    assert!((flash_at_sea_level(&mut Silent, celsius(40.0), kpa(91.3)).get::<degree_celsius>() - 42.5).abs() < 1e-9);
    // Iodine values from memory of oil chemistry.
    let values = |low, high| Range { low, likely: f64::midpoint(low, high), high };
    assert_eq!(
        [values(170.0, 200.0), values(95.0, 120.0), values(75.0, 95.0), values(0.0, 1.0)].map(drying),
        [Drying::Dries, Drying::Half, Drying::Not, Drying::Not]
    );
}

/// 3.16 g/min of acetone add 124 ppm to what one breathes, with β 0.177 m³/s (computed independently).
#[test]
fn near_field_adds() {
    let c = near_field(&mut Silent, 3.16e3 * 60.0, Length::new::<meter>(0.75), Velocity::new::<meter_per_second>(0.1)).unwrap();
    let ppm = ppm_of_mass(&mut Silent, c, 58.08, celsius(20.0), kpa(101.325)).unwrap();
    assert!((ppm - 124.0).abs() < 2.5, "{ppm}");
}

/// What the recorded formula and the history of a day say is the same.
#[test]
fn one_balance_two_ways() {
    let air = Air { volume: Volume::new::<cubic_meter>(40.0), changes: Frequency::new::<cycle_per_hour>(0.7), mixing: 2.0 };
    let held = after_source(&mut Silent, &air, 9000.0, 12.0, Time::new::<hour>(3.0)).unwrap();
    let pulse = Pulse { starts: 0.0, lasts: 8.0, rate: 9000.0, fades: 0.0 };
    let history = History { volume: 40.0, changes: 0.35, before: 12.0, pulses: vec![pulse] };
    assert!((history.held(3.0) - held).abs() < 1e-9 * held);
}

fn pulses() -> impl Strategy<Value = Vec<Pulse>> {
    let pulse = (0.0..7.0_f64, 0.05..3.0_f64, 0.0..1e5_f64, 0.0..5.0_f64);
    proptest::collection::vec(pulse.prop_map(|(starts, lasts, rate, fades)| Pulse { starts, lasts, rate, fades }), 1..4)
}

proptest! {
    /// More ventilation never means more exposure.
    #[test]
    fn more_air_never_more_exposure(pulses in pulses(), changes in 0.0..10.0_f64, more in 0.0..10.0_f64, before in 0.0..100.0_f64) {
        let air = |changes| History { volume: 40.0, changes, before, pulses: pulses.clone() };
        let (less, most) = (air(changes + more), air(changes));
        let slack = 1e-9 * (1.0 + most.peak(8.0));
        prop_assert!(less.mean(0.0, 8.0) <= most.mean(0.0, 8.0) + 1e-6 * most.mean(0.0, 8.0) + slack);
        prop_assert!(less.worst_mean(0.25, 8.0) <= most.worst_mean(0.25, 8.0) * (1.0 + 1e-4) + slack);
        prop_assert!(less.held(5.0) <= most.held(5.0) + slack);
    }

    /// A closed room keeps what was let in.
    #[test]
    fn a_closed_room_keeps_it_all(pulses in pulses(), before in 0.0..100.0_f64) {
        let air = History { volume: 40.0, changes: 0.0, before, pulses };
        let (held, let_in) = (air.held(12.0) * 40.0, air.let_in(12.0));
        prop_assert!((held - let_in).abs() <= 1e-9 * let_in);
    }

    /// No moment is above the peak, no window above the worst.
    #[test]
    fn the_peak_is_the_most(pulses in pulses(), changes in 0.0..10.0_f64, at in 0.0..8.0_f64) {
        let air = History { volume: 40.0, changes, before: 5.0, pulses };
        prop_assert!(air.held(at) <= air.peak(8.0) * (1.0 + 1e-3));
        let start = at.min(7.75);
        prop_assert!(air.mean(start, start + 0.25) <= air.worst_mean(0.25, 8.0) * (1.0 + 2e-3));
    }

    /// The vapours of a blend are none more than each alone, and their mole shares make one.
    #[test]
    fn a_blend_shares(parts in proptest::collection::vec((0.01..1.0_f64, 18.0..300.0_f64, 0.0..50.0_f64), 1..5)) {
        let components: Vec<Component> =
            parts.iter().map(|(mass_share, molar_mass_g, p)| Component { mass_share: *mass_share, molar_mass_g: *molar_mass_g, pressure: kpa(*p) }).collect();
        let over = blend(&components).unwrap();
        prop_assert!((over.iter().map(|part| part.mole_share).sum::<f64>() - 1.0).abs() < 1e-9);
        prop_assert!(over.iter().zip(&components).all(|(part, alone)| part.pressure <= alone.pressure * 1.000_001));
    }
}
