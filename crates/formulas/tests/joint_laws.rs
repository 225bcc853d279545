//! Laws of joints that hold whatever the numbers, what is refused, and the ways out of a blown fit.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

use formulas::bond::{
    BondJoint, BondMetal, Lap, Loading, RetainerKind, bond_holding, bond_quantity, bond_strength, cure_time, peak_over_average,
};
use formulas::fit::{
    Class, Feature, Instrument, Letter, Limits, Measured, chance_below_normal, chance_below_uniform, chances, clearance, limits,
    measured_gap, uncertainty,
};
use formulas::interference::{
    Adhesion, Assembly, Holding, Joint, Metal, Neighbour, Objection, assembly_temperature, contact_pressure, effective_interference,
    heating_objections, holding, hub_pressure_limit, interference_when_warmer, metal, smallest_pressure, stresses,
};
use formulas::rescue::{Blown, Decision, Method, rescue};
use formulas::seal::{Service, service_allowed, steam_joint_temperature};
use formulas::taper::{half_angle_degrees, read_rubbing};
use formulas::thread::{Form, Thread, dimensions};
use formulas::tightening::{Bolt, Condition, assembly_preload, converted_torque, preload_range, tightening_torque, torque_range};
use formulas::{FormulaError, Notebook, Silent};
use proptest::prelude::*;
use rand::rngs::ChaCha8Rng;
use rand::{RngExt, SeedableRng};
use units::{Force, Length, Pressure, Temperature, TemperatureDifference, Torque};
use uom::si::force::newton;
use uom::si::length::{micrometer, millimeter};
use uom::si::pressure::{bar, megapascal};
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::torque::newton_meter;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}
fn um(value: f64) -> Length {
    Length::new::<micrometer>(value)
}
fn celsius(value: f64) -> Temperature {
    Temperature::new::<degree_celsius>(value)
}
fn warmer(value: f64) -> TemperatureDifference {
    TemperatureDifference::new::<kelvin>(value)
}

fn zone(upper: f64, lower: f64) -> Limits {
    Limits { upper: um(upper), lower: um(lower) }
}

fn bonded(gap: f64, at: f64, length: f64) -> BondJoint {
    BondJoint {
        diameter: mm(20.0),
        length: mm(length),
        gap: mm(gap),
        hub: BondMetal::Steel,
        shaft: BondMetal::Steel,
        roughness: um(1.6),
        service: celsius(at),
        loading: Loading::Steady,
    }
}

fn pair(diameter: f64, bore: f64, outside: f64) -> Joint {
    let steel = metal("mild steel").unwrap();
    Joint { diameter: mm(diameter), shaft_bore: mm(bore), hub_outside: mm(outside), length: mm(20.0), shaft: steel, hub: steel }
}

const OILED: Adhesion = Adhesion { along: 0.08, round: 0.07 };

/// Every class the standard gives at a size.
fn classes(d: f64) -> impl Iterator<Item = (Class, Limits)> {
    let all = Letter::ALL.iter().flat_map(|letter| {
        [Feature::Hole, Feature::Shaft]
            .into_iter()
            .flat_map(move |feature| (3..=16).map(move |grade| Class { feature, letter: *letter, grade }))
    });
    all.filter_map(move |class| limits(&mut Silent, mm(d), class).ok().map(|found| (class, found)))
}

/// A million pairs drawn with a fixed seed find the closed form within four of their own standard deviations.
#[test]
fn a_million_pairs_agree_with_the_trapezoid() {
    const PAIRS: u32 = 1_000_000;
    let mut random = ChaCha8Rng::seed_from_u64(286);
    for (hole, shaft, below) in
        [(zone(21.0, 0.0), zone(28.0, 15.0), 0.0), (zone(21.0, 0.0), zone(15.0, 2.0), 0.0), (zone(10.0, 0.0), zone(-6.0, -60.0), 20.0)]
    {
        let [top, bottom, above, under] = [hole.upper, hole.lower, shaft.upper, shaft.lower].map(|length| length.get::<micrometer>());
        let hits: u32 = (0..PAIRS)
            .map(|_| {
                let bore = bottom + (top - bottom) * random.random::<f64>();
                let pin = under + (above - under) * random.random::<f64>();
                u32::from(bore - pin < below)
            })
            .sum();
        let closed = chance_below_uniform(&mut Silent, hole, shaft, um(below)).unwrap();
        let deviation = (closed * (1.0 - closed) / f64::from(PAIRS)).sqrt();
        assert!((f64::from(hits) / f64::from(PAIRS) - closed).abs() < 4.0 * deviation, "{hits} of {PAIRS}, closed form {closed}");
    }
}

/// From memory, any table of the normal distribution.
#[test]
fn the_normal_distribution() {
    for (z, share) in [(0.0, 0.5), (1.0, 0.841_345), (-1.959_964, 0.025), (3.0, 0.998_650), (-6.0, 9.866e-10)] {
        let found = formulas::fit::Phi(z);
        assert!((found / share - 1.0).abs() < 1e-4, "Φ({z}) = {found}");
    }
}

proptest! {
    #[test]
    fn limits_are_in_order_and_widen_with_the_grade(d in 0.5..250.0) {
        for (class, found) in classes(d) {
            prop_assert!(found.upper > found.lower, "{class} at {d}");
            if let Ok(coarser) = limits(&mut Silent, mm(d), Class { grade: class.grade + 1, ..class }) {
                prop_assert!(coarser.upper - coarser.lower > found.upper - found.lower, "{class} at {d}");
            }
        }
    }

    #[test]
    fn letters_run_from_loose_to_tight(d in 0.5..250.0) {
        let shaft = |letter: &Letter| limits(&mut Silent, mm(d), Class { feature: Feature::Shaft, letter: *letter, grade: 6 }).ok();
        // j and js lie across the line beside each other and are left out.
        let plain = Letter::ALL.iter().filter(|letter| !matches!(letter, Letter::J | Letter::Js));
        let upper: Vec<f64> = plain.filter_map(shaft).map(|found| found.upper.get::<micrometer>()).collect();
        prop_assert!(upper.windows(2).all(|pair| pair[0] <= pair[1]), "{upper:?}");
    }

    /// ISO 286-1: holes A to H mirror their shafts, and a fine hole with its letter's shaft one grade finer fits as the two exchanged.
    #[test]
    fn exchanged_bases_give_the_same_fit(d in 3.01..250.0, letter in prop::sample::select(vec!["k", "n", "p", "s", "u"])) {
        let at = |class: String| limits(&mut Silent, mm(d), class.parse().unwrap()).unwrap();
        let hole_based = clearance(&mut Silent, at("H7".into()), at(format!("{letter}6")));
        let shaft_based = clearance(&mut Silent, at(format!("{}7", letter.to_uppercase())), at("h6".into()));
        prop_assert!((hole_based.low - shaft_based.low).abs() < um(1e-6));
        prop_assert!((hole_based.high - shaft_based.high).abs() < um(1e-6));
    }

    #[test]
    fn chances_only_grow(hole in (0.0..30.0, 5.0..60.0), shaft in (-40.0..40.0, 3.0..40.0), c in -100.0..100.0, more in 0.0..20.0) {
        let (hole, shaft) = (zone(hole.0 + hole.1, hole.0), zone(shaft.0 + shaft.1, shaft.0));
        for chance in [chance_below_uniform::<Silent>, chance_below_normal::<Silent>] {
            let at = |c: f64| chance(&mut Silent, hole, shaft, um(c)).unwrap();
            prop_assert!((0.0..=1.0).contains(&at(c)) && at(c + more) >= at(c) - 1e-12);
            let mean = clearance(&mut Silent, hole, shaft).likely;
            prop_assert!((chance(&mut Silent, hole, shaft, mean).unwrap() - 0.5).abs() < 1e-9);
        }
    }

    #[test]
    fn the_three_chances_are_all_there_is(gap in -100.0..200.0, widest in 0.0..150.0, spread in 0.0..30.0) {
        let part = |size: f64| Measured { size: mm(size), by: Instrument::Micrometer, spread: um(spread), expansion_per_k: 11e-6, warmth: warmer(3.0) };
        let found = measured_gap(&mut Silent, &part(25.0 + gap / 1000.0), &part(25.0)).unwrap();
        let of = chances(&mut Silent, &found, um(widest)).unwrap();
        prop_assert!((of.press + of.slip + of.loose - 1.0).abs() < 1e-12 && of.press >= 0.0 && of.loose >= 0.0 && of.slip >= -1e-12);
        let rounder = Measured { spread: um(0.0), ..part(25.0) };
        prop_assert!(uncertainty(&mut Silent, &rounder).unwrap() <= uncertainty(&mut Silent, &part(25.0)).unwrap());
    }

    #[test]
    fn hoop_and_radial_stress_sum_alike_at_both_faces(d in 3.0..80.0, hollow in 0.0..0.9, wall in 1.1..4.0, delta in 1e-4..2e-3) {
        // Lamé: σ_r + σ_θ is the same throughout a cylinder.
        let joint = pair(d, hollow * d, wall * d);
        let p = contact_pressure(&mut Silent, &joint, mm(delta * d)).unwrap();
        let found = stresses(&mut Silent, &joint, p).unwrap();
        let mpa = |stress: Pressure| stress.get::<megapascal>();
        let close = |a: f64, b: f64| (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1.0);
        prop_assert!(close(mpa(found.hub_bore_hoop) + mpa(found.hub_bore_radial), mpa(found.hub_outside_hoop)));
        let shaft = [mpa(found.shaft_outside_hoop) + mpa(found.shaft_outside_radial), mpa(found.shaft_inside_hoop) + mpa(found.shaft_inside_radial)];
        prop_assert!(close(shaft[0], shaft[1]), "{shaft:?}");
    }

    #[test]
    fn more_interference_never_holds_less_until_it_yields(d in 3.0..80.0, wall in 1.2..4.0, delta in 1e-5..2e-3, more in 0.0..1e-3) {
        let joint = pair(d, 0.0, wall * d);
        let at = |delta: f64| contact_pressure(&mut Silent, &joint, mm(delta * d)).unwrap();
        if at(delta + more) <= hub_pressure_limit(&mut Silent, &joint).unwrap() {
            let held = |delta: f64| holding(&mut Silent, &joint, at(delta), OILED, 1.5).unwrap();
            prop_assert!(held(delta + more).axial >= held(delta).axial && held(delta + more).torque >= held(delta).torque);
        }
    }

    #[test]
    fn rougher_parts_keep_less(delta in 0.0..60.0, rz in 0.0..20.0, more in 0.0..10.0) {
        let left = |rz: f64, how| effective_interference(&mut Silent, um(delta), um(rz), um(rz), how).unwrap();
        prop_assert!(left(rz + more, Assembly::Pressed).low <= left(rz, Assembly::Pressed).low);
        prop_assert!(left(rz, Assembly::Shrunk).high >= left(rz, Assembly::Pressed).high);
    }

    #[test]
    fn the_pressure_asked_for_holds_the_load(f in 1.0..5000.0, t in 0.1..50.0, safety in 1.0..3.0) {
        let joint = pair(20.0, 0.0, 40.0);
        for load in [(f, 0.0), (0.0, t)] {
            let load = Holding { axial: Force::new::<newton>(load.0), torque: Torque::new::<newton_meter>(load.1) };
            let p = smallest_pressure(&mut Silent, &joint, load, OILED, safety).unwrap();
            let held = holding(&mut Silent, &joint, p, OILED, safety).unwrap();
            prop_assert!(held.axial >= load.axial * 0.999_999 && held.torque >= load.torque * 0.999_999);
        }
    }

    #[test]
    fn wider_gaps_are_never_stronger(gap in 0.0..0.24, more in 0.0..0.1, at in -40.0..150.0) {
        for kind in [RetainerKind::Removable, RetainerKind::LowViscosity, RetainerKind::General, RetainerKind::HighTemperature, RetainerKind::GapFilling] {
            let held = |gap: f64| bond_strength(&mut Silent, &kind.retainer(), &bonded(gap, at, 20.0), 2.0);
            match (held(gap), held(gap + more)) {
                (Ok(close), Ok(wide)) => prop_assert!(wide.likely <= close.likely && wide.low <= wide.likely && wide.likely <= wide.high),
                // A gap once too wide stays too wide.
                (Err(_), wide) => prop_assert!(wide.is_err()),
                (Ok(_), Err(error)) => prop_assert!(matches!(error, FormulaError::OutOfRange { .. }), "{error}"),
            }
        }
    }

    #[test]
    fn hotter_is_never_stronger(at in -50.0..200.0, more in 0.0..60.0) {
        for kind in [RetainerKind::General, RetainerKind::HighTemperature] {
            let held = |at: f64| bond_strength(&mut Silent, &kind.retainer(), &bonded(0.05, at, 20.0), 2.0).map(|range| range.likely);
            if let (Ok(cool), Ok(hot)) = (held(at), held(at + more)) {
                prop_assert!(hot <= cool);
            }
        }
    }

    #[test]
    fn longer_joints_never_hold_less(length in 2.0..80.0, more in 0.0..20.0) {
        let held = |length| bond_holding(&mut Silent, &RetainerKind::General.retainer(), &bonded(0.05, 22.0, length), 2.0).unwrap().axial.low;
        prop_assert!(held(length + more) >= held(length) * 0.999_999);
        // Statics: the force acts at the face, half a diameter (20 mm) from the axis.
        let both = bond_holding(&mut Silent, &RetainerKind::General.retainer(), &bonded(0.05, 22.0, length), 2.0).unwrap();
        prop_assert!((both.torque.low.get::<newton_meter>() - both.axial.low.get::<newton>() * 0.010).abs() < 1e-9 * both.axial.low.get::<newton>());
    }

    #[test]
    fn the_cure_is_longer_when_colder_and_in_wider_gaps(at in 5.0..40.0, colder in 0.0..10.0, gap in 0.0..0.4, wider in 0.0..0.1) {
        let full = |at: f64, gap: f64| cure_time(&mut Silent, celsius(at), mm(gap), [BondMetal::Steel; 2], false).map(|cure| cure.full);
        if let (Ok(warm), Ok(cold)) = (full(at, gap), full(at - colder, gap)) {
            prop_assert!(cold >= warm);
        }
        prop_assert!(full(at, gap + wider).unwrap() >= full(at, gap).unwrap());
        let passive = cure_time(&mut Silent, celsius(at), mm(gap), [BondMetal::Steel, BondMetal::Aluminium], false).unwrap();
        prop_assert!(passive.full > full(at, gap).unwrap());
    }

    #[test]
    fn a_lap_never_peaks_below_its_mean(overlap in 1.0..100.0, more in 0.0..50.0) {
        let at = |overlap: f64| {
            let lap = Lap {
                width: mm(25.0), overlap: mm(overlap), sheet: mm(1.6), bond_line: mm(0.2),
                modulus: Pressure::new::<megapascal>(70_000.0), shear_modulus: Pressure::new::<megapascal>(1000.0),
            };
            peak_over_average(&mut Silent, &lap).unwrap()
        };
        prop_assert!(at(overlap) >= 1.0 && at(overlap + more) >= at(overlap));
    }

    #[test]
    fn diameters_of_a_thread_are_in_order(d in 1.0..60.0, share in 0.03..0.3) {
        for form in [Form::Metric, Form::Unified, Form::Whitworth, Form::BritishAssociation] {
            let found = dimensions(&mut Silent, &Thread { form, major: mm(d), pitch: mm(share * d) }).unwrap();
            prop_assert!(found.root_diameter <= found.minor_diameter && found.minor_diameter < found.pitch_diameter && found.pitch_diameter < mm(d));
        }
    }

    #[test]
    fn an_oiled_thread_never_needs_more_torque(d in prop::sample::select(vec![3.0, 5.0, 8.0, 12.0, 24.0]), force in 100.0..50_000.0, mu in 0.05..0.4, slicker in 0.0..0.03) {
        let bolt = Bolt::hexagon(format!("M{d}").parse().unwrap());
        let torque = |mu: f64| tightening_torque(&mut Silent, &bolt, Force::new::<newton>(force), mu, mu).unwrap().total();
        prop_assert!(torque(mu - slicker) <= torque(mu));
        let converted = converted_torque(&mut Silent, &bolt, torque(mu), mu, mu - slicker).unwrap();
        prop_assert!((converted.torque - torque(mu - slicker)).abs() <= torque(mu) * 1e-9 && converted.overload >= 1.0);
        let yields = Pressure::new::<megapascal>(640.0);
        let limit = |mu| assembly_preload(&mut Silent, &bolt.thread, yields, mu).unwrap();
        prop_assert!(limit(mu - slicker) >= limit(mu));
    }

    #[test]
    fn torque_and_force_turn_round(force in 100.0..50_000.0) {
        let bolt = Bolt::hexagon("M10".parse().unwrap());
        for condition in Condition::ALL {
            let torque = torque_range(&mut Silent, &bolt, Force::new::<newton>(force), condition.friction()).unwrap();
            prop_assert!(torque.low <= torque.likely && torque.likely <= torque.high);
            let back = preload_range(&mut Silent, &bolt, torque.likely, condition.friction()).unwrap();
            prop_assert!((back.likely.get::<newton>() - force).abs() < 1e-6 * force && back.low <= back.likely && back.likely <= back.high);
        }
    }
}

/// What makes no sense is refused, and says why.
#[test]
fn nonsense_is_refused() {
    let press = |joint: &Joint, delta: f64| contact_pressure(&mut Silent, joint, mm(delta)).unwrap_err();
    let good = pair(25.0, 0.0, 50.0);
    assert!(matches!(press(&Joint { hub_outside: mm(20.0), ..good }, 0.02), FormulaError::NotLess { .. }));
    assert!(matches!(press(&Joint { shaft_bore: mm(25.0), ..good }, 0.02), FormulaError::NotLess { .. }));
    assert!(matches!(press(&Joint { length: mm(0.0), ..good }, 0.02), FormulaError::NotPositive { .. }));
    assert!(matches!(press(&Joint { hub: Metal { poisson: 1.0, ..good.hub }, ..good }, 0.02), FormulaError::OutOfRange { .. }));
    assert!(matches!(press(&good, 1.0), FormulaError::OutOfRange { .. }));
    assert!(matches!(press(&good, -0.01), FormulaError::OutOfRange { .. }));
    assert!(matches!(press(&good, f64::NAN), FormulaError::OutOfRange { .. }));
    let plastic = Metal { modulus: Pressure::new::<megapascal>(3000.0), ..good.hub };
    assert!(matches!(press(&Joint { hub: plastic, ..good }, 0.02), FormulaError::Refused { .. }));
    // A small steel hub would have to be at 900 °C and more.
    let hot = assembly_temperature(&mut Silent, mm(0.05), mm(0.02), mm(6.0), 11e-6, celsius(20.0));
    assert!(matches!(hot, Err(FormulaError::OutOfRange { .. })), "{hot:?}");
    assert!(interference_when_warmer(&mut Silent, &good, mm(0.02), warmer(900.0)).is_err());

    let held = |joint: &BondJoint| bond_strength(&mut Silent, &RetainerKind::General.retainer(), joint, 2.0).unwrap_err();
    assert!(matches!(held(&bonded(0.05, 900.0, 20.0)), FormulaError::OutOfRange { .. }));
    assert!(matches!(held(&bonded(0.3, 22.0, 20.0)), FormulaError::OutOfRange { .. }));
    assert!(matches!(held(&bonded(-0.01, 22.0, 20.0)), FormulaError::OutOfRange { .. }));
    assert!(matches!(held(&bonded(0.05, 22.0, 0.0)), FormulaError::NotPositive { .. }));
    assert!(cure_time(&mut Silent, celsius(2.0), mm(0.05), [BondMetal::Steel; 2], false).is_err());
    assert!(bond_quantity(&mut Silent, mm(0.0), mm(10.0), mm(0.1)).is_err());

    let limit = |d: f64, class: &str| class.parse().and_then(|class| limits(&mut Silent, mm(d), class)).unwrap_err();
    assert!(matches!(limit(300.0, "H7"), FormulaError::OutOfRange { .. }));
    assert!(matches!(limit(0.0, "H7"), FormulaError::NotPositive { .. }));
    assert!(matches!(limit(10.0, "t6"), FormulaError::NoSuchClass { .. }));
    assert!(matches!(limit(10.0, "H99"), FormulaError::NoSuchClass { .. }));
    assert!(matches!(limit(10.0, "H300"), FormulaError::UnreadableClass { .. }));
    assert!(matches!(limit(10.0, "I7"), FormulaError::UnreadableClass { .. }));
    assert_eq!(
        limit(10.0, "q6").to_string(),
        "“q6” is no tolerance class; write a letter and a grade, such as H7 for a hole or g6 for a shaft"
    );

    for name in ["M0", "M8x9", "M8.3", "1/0-20", "-20", "99 BA", "9/16 BSX", "", "M"] {
        assert!(name.parse::<Thread>().is_err(), "{name}");
    }
    let bolt = Bolt::hexagon("M8".parse().unwrap());
    assert!(tightening_torque(&mut Silent, &bolt, Force::new::<newton>(1000.0), 0.0, 0.1).is_err());
    assert!(tightening_torque(&mut Silent, &bolt, Force::new::<newton>(1000.0), 3.0, 0.1).is_err());
    let wide = Bolt { hole: mm(20.0), ..bolt };
    assert!(matches!(tightening_torque(&mut Silent, &wide, Force::new::<newton>(1.0), 0.1, 0.1), Err(FormulaError::NotLess { .. })));

    for service in [Service::Boiler, Service::Oxygen, Service::FuelGas] {
        assert!(matches!(service_allowed(service), Err(FormulaError::Refused { .. })));
    }
    assert!(service_allowed(Service::Steam).is_ok());
    assert!(steam_joint_temperature(&mut Silent, Pressure::new::<bar>(5.0), warmer(-5.0)).is_err());
    assert!(half_angle_degrees(&mut Silent, 0.0).is_err() && half_angle_degrees(&mut Silent, f64::NAN).is_err());
    assert!(read_rubbing(&mut Silent, [formulas::taper::Line { large_end: 1.2, small_end: 0.0 }; 3], false).is_err());
}

/// *Common practice, no source*: what must never be heated for assembly; soft solder melts at 183 °C.
#[test]
fn what_heat_must_not_touch() {
    let steel = metal("mild steel").unwrap();
    assert!(heating_objections(celsius(200.0), steel.hottest, &[]).is_empty());
    let near = [Neighbour::Magnesium, Neighbour::SoftSolder, Neighbour::Seal, Neighbour::PlasticCage];
    assert_eq!(heating_objections(celsius(200.0), steel.hottest, &near).len(), 4);
    assert_eq!(heating_objections(celsius(60.0), steel.hottest, &near), [Objection::Neighbour(Neighbour::Magnesium)]);
    let bearing = metal("rolling bearing").unwrap();
    assert!(matches!(heating_objections(celsius(150.0), bearing.hottest, &[])[..], [Objection::Metal { .. }]));
}

fn blown(gap: f64, by: [Instrument; 2]) -> Blown {
    let part = |size: f64, by| Measured { size: mm(size), by, spread: um(1.0), expansion_per_k: 11e-6, warmth: warmer(1.0) };
    Blown {
        bore: part(20.0 + gap, by[0]),
        shaft: part(20.0, by[1]),
        joint: Joint { hub: metal("quenched and tempered steel").unwrap(), ..pair(20.0, 0.0, 40.0) },
        adhesion: OILED,
        bond_metals: [BondMetal::Steel; 2],
        roughness: [um(0.8), um(0.8)],
        load: Holding { axial: Force::new::<newton>(1000.0), torque: Torque::new::<newton_meter>(5.0) },
        loading: Loading::Steady,
        safety: 2.0,
        service: celsius(40.0),
        run_out: mm(0.3),
        removable: false,
    }
}

const FINE: [Instrument; 2] = [Instrument::BoreMicrometer, Instrument::Micrometer];

/// *Common practice, no source*: the order in which a blown fit is mended, by its gap.
#[test]
fn the_way_out_follows_the_gap() {
    for (gap, way) in [
        (-0.035, Method::Press),
        (0.0, Method::PressAndBond),
        (0.035, Method::LowViscosity),
        (0.10, Method::General),
        (0.20, Method::GapFilling),
        (0.40, Method::Remake),
    ] {
        let found = rescue(&mut Silent, &blown(gap, FINE)).unwrap();
        assert_eq!(found.decision, Decision::Take(way), "at {gap}: {:#?}", found.ways);
        assert_eq!(found.ways[0].method, way, "at {gap}");
        assert_eq!(found.ways.len(), 6);
        assert!(found.ways.iter().all(|way| (0.0..=1.0).contains(&way.suits)));
    }
}

/// *Common practice, no source*: a calliper cannot choose between a press, a slip fit and a bond.
#[test]
fn a_calliper_alone_cannot_decide() {
    // Statics: 5 N·m on a diameter of 20 mm are 500 N at the face, and with 1000 N along it √(1000² + 500²) N.
    let needed = rescue(&mut Silent, &blown(0.0, FINE)).unwrap().needed.get::<newton>();
    assert!((needed - 1_250_000.0_f64.sqrt()).abs() < 1e-6, "{needed}");
    for gap in [-0.03, 0.0, 0.06, 0.12] {
        let found = rescue(&mut Silent, &blown(gap, [Instrument::CalliperJaws, Instrument::Calliper])).unwrap();
        assert!(
            matches!(found.decision, Decision::Measure { part: Feature::Hole, by: Instrument::BoreMicrometer, .. }),
            "{:?}",
            found.decision
        );
    }
    // With the bore well measured, it is the shaft's turn.
    let found = rescue(&mut Silent, &blown(0.06, [Instrument::BoreMicrometer, Instrument::Calliper])).unwrap();
    assert!(matches!(found.decision, Decision::Measure { part: Feature::Shaft, by: Instrument::Micrometer, .. }), "{:?}", found.decision);
}

#[test]
fn what_speaks_against_a_bond() {
    let slip = blown(0.10, FINE);
    let decision = |blown: &Blown| rescue(&mut Silent, blown).unwrap().decision;
    // It has to come apart cold; it must run true; it is too hot; the load is too much.
    for against in [
        Blown { removable: true, ..slip },
        Blown { run_out: mm(0.02), ..slip },
        Blown { service: celsius(250.0), ..slip },
        Blown { load: Holding { torque: Torque::new::<newton_meter>(500.0), ..slip.load }, ..slip },
    ] {
        assert_eq!(decision(&against), Decision::Take(Method::Remake));
    }
    assert!(
        rescue(
            &mut Silent,
            &Blown { load: Holding { axial: Force::new::<newton>(0.0), torque: Torque::new::<newton_meter>(0.0) }, ..slip }
        )
        .is_err()
    );
}

/// Lamé: the hub of a small pin yields at a smaller interference, so the press with a compound ends where the press does.
#[test]
fn a_compound_lightens_no_press() {
    let small = Blown {
        joint: pair(4.0, 0.0, 8.0),
        load: Holding { axial: Force::new::<newton>(50.0), torque: Torque::new::<newton_meter>(0.0) },
        ..blown(0.0, FINE)
    };
    let found = rescue(&mut Silent, &small).unwrap();
    let window = |method| found.ways.iter().find(|way| way.method == method).unwrap().window;
    assert!(window(Method::PressAndBond).0 > mm(-0.02));
    assert_eq!(window(Method::PressAndBond).0, window(Method::Press).0);
}

/// A gap near the end of every way that could serve asks for a better measurement, finer than the one there is.
#[test]
fn a_gap_on_the_edge_asks_to_be_measured() {
    let edge = Blown { bore: Measured { by: Instrument::TelescopicGauge, ..blown(0.245, FINE).bore }, ..blown(0.245, FINE) };
    let found = rescue(&mut Silent, &edge).unwrap();
    let Decision::Measure { part, until, towards, .. } = found.decision else { unreachable!("{:?}", found.decision) };
    assert_eq!((part, towards), (Feature::Hole, Method::GapFilling));
    assert!(until < found.gap.uncertainty && until > um(0.0));
}

/// Every step of these chapters is shown as sound MathML, and none with a number that is none.
#[test]
fn the_working_can_be_shown() {
    let mut notebook = Notebook::new();
    let r = &mut notebook;
    for class in ["H7", "g6", "JS7", "js6", "K7", "N9", "P9", "J7", "j6", "s6"] {
        limits(r, mm(25.0), class.parse().unwrap()).unwrap();
    }
    rescue(r, &blown(-0.02, FINE)).unwrap();
    rescue(r, &blown(0.08, FINE)).unwrap();
    stresses(r, &pair(20.0, 8.0, 40.0), Pressure::new::<megapascal>(50.0)).unwrap();
    let bolt = Bolt::hexagon("M8".parse().unwrap());
    converted_torque(r, &bolt, Torque::new::<newton_meter>(20.0), 0.2, 0.1).unwrap();
    assembly_preload(r, &bolt.thread, Pressure::new::<megapascal>(640.0), 0.12).unwrap();
    formulas::tightening::breaking_torque(r, &bolt.thread, Pressure::new::<megapascal>(800.0)).unwrap();
    cure_time(r, celsius(12.0), mm(0.08), [BondMetal::Steel; 2], false).unwrap();
    steam_joint_temperature(r, Pressure::new::<bar>(5.0), warmer(0.0)).unwrap();
    assert!(notebook.steps().count() > 100);
    for step in notebook.steps() {
        roxmltree::Document::parse(&step.math()).unwrap();
        assert!(step.value.is_finite(), "{}", step.line());
    }
}
