//! Small formulas worked by hand, or set against a second published form of the same rule. The source stands beside each.

use formulas::cutting::{Coolant, cutting_power, feed_factor, heat_flow, motor_power, tap_drops};
use formulas::film::pressure_coefficient;
use formulas::gear::pitch_line_speed;
use formulas::oil_mist::allowed_mist_mg_per_h;
use formulas::plain_bearing::{Journal, minimum_film, sommerfeld};
use formulas::rolling_bearing::{first_fill, mean_diameter, speed_factor};
use formulas::slideway::{journal_area, rolling_area, screw_thread_area, slide_area, slide_viscosity};
use formulas::viscosity::{density_at, dynamic_viscosity, kinematic_viscosity};
use formulas::{FormulaError, Silent};
use units::{
    AngularVelocity, DynamicViscosity, Force, Frequency, KinematicViscosity, Length, MassDensity, Power, Pressure, Temperature,
    TemperatureDifference, Volume, VolumeRate,
};
use uom::si::angular_velocity::revolution_per_minute as rpm;
use uom::si::area::square_millimeter;
use uom::si::dynamic_viscosity::{millipascal_second, pascal_second};
use uom::si::force::newton;
use uom::si::frequency::cycle_per_hour;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::{micrometer, millimeter};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::power::{horsepower, watt};
use uom::si::pressure::megapascal;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::velocity::meter_per_second;
use uom::si::volume::{cubic_centimeter, cubic_inch, cubic_meter};
use uom::si::volume_rate::{cubic_millimeter_per_second, liter_per_minute};

fn near(found: f64, expected: f64, relative: f64) {
    let off = (found - expected).abs();
    assert!(off <= relative * expected.abs(), "{found} instead of {expected} ± {} %", relative * 100.0);
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

/// From memory, the petroleum measurement tables for lubricating oils: α₁₅ = 0.6278/ρ₁₅ and
/// ρ = ρ₁₅·exp(−α₁₅·ΔT·(1 + 0.8·α₁₅·ΔT)). The straight line stays within 0.5 % from −20 to 100 °C, and 0.1 % at 40 °C.
#[test]
fn density_of_oil() {
    for rho_15 in [830.0_f64, 880.0, 920.0] {
        for (t, tolerance) in [(-20.0, 0.005), (15.0, 1e-12), (40.0, 0.001), (100.0, 0.005)] {
            let alpha = 0.6278 / rho_15;
            let warmed = alpha * (t - 15.0);
            let tables = rho_15 * (-warmed * (1.0 + 0.8 * warmed)).exp();
            let found =
                density_at(&mut Silent, MassDensity::new::<kilogram_per_cubic_meter>(rho_15), Temperature::new::<degree_celsius>(t));
            near(found.get::<kilogram_per_cubic_meter>(), tables, tolerance);
        }
    }
}

/// Definition: kinematic and dynamic viscosity are each other's inverse; a density of nothing is refused.
#[test]
fn both_viscosities() -> Result<(), FormulaError> {
    let rho = MassDensity::new::<kilogram_per_cubic_meter>(870.0);
    let nu = KinematicViscosity::new::<mm2_per_s>(68.0);
    let eta = dynamic_viscosity(&mut Silent, nu, rho);
    near(eta.get::<millipascal_second>(), 59.16, 1e-12);
    near(kinematic_viscosity(&mut Silent, eta, rho)?.get::<mm2_per_s>(), 68.0, 1e-12);
    let nothing = MassDensity::new::<kilogram_per_cubic_meter>(0.0);
    assert!(matches!(kinematic_viscosity(&mut Silent, eta, nothing), Err(FormulaError::NotPositive { .. })));
    Ok(())
}

/// Published (*The Tribology Handbook*, A20): 30 to 50 % of the free space; fast spindles 15 to 25 %, common practice, no source.
#[test]
fn grease_fill() {
    let space = Volume::new::<cubic_centimeter>(10.0);
    let fill = |fast| first_fill(&mut Silent, space, fast).get::<cubic_centimeter>();
    assert!((3.0..=5.0).contains(&fill(false)));
    assert!((1.5..=2.5).contains(&fill(true)));
}

/// By hand: a 25 × 52 mm bearing has a mean diameter of 38.5 mm, and at 2000 rev/min a speed factor of 77 000 mm/min.
#[test]
fn speed_factors() {
    let d_m = mean_diameter(mm(25.0), mm(52.0));
    near(d_m.get::<millimeter>(), 38.5, 1e-12);
    near(speed_factor(&mut Silent, AngularVelocity::new::<rpm>(2000.0), d_m), 77_000.0, 1e-9);
}

/// By hand: 50 mm at 1450 rev/min is 3.796 m/s.
#[test]
fn pitch_line() {
    near(pitch_line_speed(&mut Silent, mm(50.0), AngularVelocity::new::<rpm>(1450.0)).get::<meter_per_second>(), 3.796, 1e-4);
}

/// Ocvirk's short-bearing theory in closed form (published 1952): S·(L/D)² = (1 − ε²)²/(π·ε·√(π²·(1 − ε²) + 16·ε²)). At a quarter of the
/// diameter the film worked here errs on the thin side of it, and by less than 35 %.
#[test]
fn short_bearings_err_on_the_thin_side() -> Result<(), FormulaError> {
    let journal = Journal {
        diameter: mm(40.0),
        length: mm(10.0),
        load: Force::new::<newton>(400.0),
        speed: AngularVelocity::new::<rpm>(600.0),
        clearance: mm(0.04),
        journal_roughness: Length::new::<micrometer>(0.4),
        bearing_roughness: Length::new::<micrometer>(0.8),
    };
    let one = DynamicViscosity::new::<pascal_second>(1.0);
    let per_pascal_second = sommerfeld(&mut Silent, &journal, one)?;
    for eccentricity in [0.3_f64, 0.5, 0.6, 0.7] {
        let rest = 1.0 - eccentricity.powi(2);
        let pi = std::f64::consts::PI;
        let s = 16.0 * rest.powi(2) / (pi * eccentricity * (pi.powi(2) * rest + 16.0 * eccentricity.powi(2)).sqrt());
        let film = minimum_film(&mut Silent, &journal, DynamicViscosity::new::<pascal_second>(s / per_pascal_second))?;
        let share = film.get::<micrometer>() / (20.0 * (1.0 - eccentricity));
        assert!((0.65..=1.0).contains(&share), "at ε = {eccentricity} the film is {share} of the theory's");
    }
    Ok(())
}

/// Published (ISO 2904): Tr 20 × 4 has a pitch diameter of 18 mm. By hand, 40 mm of nut hold ten turns 2 mm high: 1131 mm².
#[test]
fn thread_area() -> Result<(), FormulaError> {
    near(screw_thread_area(&mut Silent, mm(20.0), mm(4.0), mm(40.0))?.get::<square_millimeter>(), 1131.0, 1e-3);
    Ok(())
}

/// By hand: areas that a film covers.
#[test]
fn areas() {
    near(slide_area(&mut Silent, mm(150.0), mm(20.0), 4.0).get::<square_millimeter>(), 12_000.0, 1e-12);
    near(journal_area(&mut Silent, mm(25.0), mm(30.0)).get::<square_millimeter>(), 2356.2, 1e-4);
    near(rolling_area(&mut Silent, mm(25.0), 2.0).get::<square_millimeter>(), 1250.0, 1e-12);
}

/// Common practice, no source: an ordinary slide runs at 80 to 450 mm²/s, and a heavier one is given no thinner oil.
#[test]
fn slides() {
    let likely = |p: f64| slide_viscosity(&mut Silent, Pressure::new::<megapascal>(p), None).likely.get::<mm2_per_s>();
    assert!([0.0, 0.05, 0.5].map(likely).windows(2).all(|pair| pair[0] <= pair[1]));
    assert!((80.0..=450.0).contains(&likely(0.05)));
}

/// *Machinery's Handbook*, *from memory*: the same power constant stands in its tables as 0.82 hp·min/in³ and 2.24 J/mm³.
#[test]
fn power_in_both_systems() -> Result<(), FormulaError> {
    let cubic_inch_a_minute = VolumeRate::new::<cubic_millimeter_per_second>(Volume::new::<cubic_inch>(1.0).value * 1e9 / 60.0);
    let power = cutting_power(&mut Silent, 2.24, 1.0, 1.0, cubic_inch_a_minute);
    near(power.get::<horsepower>(), 0.82, 0.005);
    near(motor_power(&mut Silent, power, 0.8)?.get::<horsepower>(), 1.025, 0.005);
    Ok(())
}

/// *Machinery's Handbook*, *from memory*: feed factors of its table.
#[test]
fn feed_factors() -> Result<(), FormulaError> {
    for (feed, factor) in [(0.05, 1.40), (0.10, 1.25), (0.20, 1.08), (0.30, 1.00)] {
        near(feed_factor(&mut Silent, mm(feed))?, factor, 0.015);
    }
    Ok(())
}

/// By hand: 1 kW at a rise of 10 K takes 1000/(4·10⁶·10) m³/s of a water mix, 1.5 L/min; oil takes 4.0/1.7 as much.
#[test]
fn heat_carried_off() -> Result<(), FormulaError> {
    let flow = |coolant| {
        heat_flow(&mut Silent, Power::new::<watt>(1000.0), TemperatureDifference::new::<kelvin>(10.0), coolant)
            .map(|flow| flow.get::<liter_per_minute>())
    };
    near(flow(Coolant::WaterMix)?, 1.5, 1e-9);
    near(flow(Coolant::Oil)?, 1.5 * 4.0 / 1.7, 1e-9);
    Ok(())
}

/// Common practice, no source: a drop for each diameter of depth, two at least.
#[test]
fn drops_for_a_tap() -> Result<(), FormulaError> {
    for (depth, drops) in [(3.0, 2), (12.0, 2), (12.1, 3), (30.0, 5)] {
        assert_eq!(tap_drops(&mut Silent, mm(6.0), mm(depth))?, drops);
    }
    Ok(())
}

/// By hand from NIOSH's 0.5 mg/m³: a shut garage of 40 m³ with half an air change an hour bears 10 mg an hour.
#[test]
fn mist_a_garage_bears() {
    let allowed = allowed_mist_mg_per_h(&mut Silent, Volume::new::<cubic_meter>(40.0), Frequency::new::<cycle_per_hour>(0.5));
    near(allowed, 10.0, 1e-9);
}

/// From memory: textbooks give mineral oils 10 to 25 GPa⁻¹.
#[test]
fn pressure_coefficients() {
    for eta in [5.0, 30.0, 200.0] {
        let alpha = pressure_coefficient(&mut Silent, DynamicViscosity::new::<millipascal_second>(eta)) * 1e9;
        assert!((10.0..=25.0).contains(&alpha), "{alpha}");
    }
}
