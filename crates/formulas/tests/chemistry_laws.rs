//! Laws of coats, solutions, pickles, quenches and stock that hold whatever the numbers, and what is refused.

use formulas::coating::{
    Application, Face, GRITS, Immersed, Tank, best_stance, blackening, coat_volume, grit_sequence, immersion, size_change, tolerance_use,
};
use formulas::pickle::{Oxide, copper_limit, neutralise, oxide_copper, pickle_bath, usual_strength};
use formulas::quench::{
    Charge, HotMetal, Liquid, Lump, bath_after, flash_margin, iron_heat_kj_per_kg, oil_volume, quench_vessel, temperature_after, time_to,
    volume_for_rise,
};
use formulas::solid_area::{Solid, Texture, surface_area, textured_area, volume};
use formulas::solution::{
    Acid, caustic_rise, caustic_solution, dilution, ideal_ph, mixing, parts_share, rinse_residue, sulfuric_density, sulfuric_dilution,
    sulfuric_rise,
};
use formulas::stock::{Demand, Offer, PackUse, cheapest_pack, containment, fill_limit, pack_use, reorder_point};
use formulas::{Caution, FormulaError, Notebook, Silent};
use proptest::prelude::*;
use units::{Area, Length, Mass, MassDensity, Range, Ratio, Temperature, TemperatureDifference, Time, Volume};
use uom::si::area::{square_meter, square_millimeter};
use uom::si::length::{micrometer, millimeter};
use uom::si::mass::{gram, kilogram};
use uom::si::mass_density::{gram_per_cubic_centimeter, kilogram_per_cubic_meter};
use uom::si::ratio::{percent, ratio};
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{day, second};
use uom::si::volume::{cubic_millimeter, liter, milliliter};

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
fn share(value: f64) -> Ratio {
    Ratio::new::<percent>(value)
}
fn grams(value: f64) -> Mass {
    Mass::new::<gram>(value)
}
fn litres(value: f64) -> Volume {
    Volume::new::<liter>(value)
}
fn hot(kilograms: f64, at: f64) -> Charge {
    Charge { mass: Mass::new::<kilogram>(kilograms), metal: HotMetal::Iron, at: celsius(at) }
}
fn refused<T>(found: &Result<T, FormulaError>) -> bool {
    matches!(found, Err(FormulaError::Refused { .. }))
}
fn near(found: f64, expected: f64, relative: f64) {
    assert!((found - expected).abs() <= relative * expected.abs(), "{found} instead of {expected}");
}

/// By hand, with the formulas of any book of geometry.
#[test]
fn areas_and_volumes() {
    let plate = Solid::Plate {
        mass: grams(785.0),
        density: MassDensity::new::<gram_per_cubic_centimeter>(7.85),
        thickness: mm(2.0),
        edge: mm(1000.0),
    };
    let ring = Solid::Tube { outside: mm(40.0), bore: mm(20.0), length: mm(30.0) };
    let block = Solid::Block { length: mm(10.0), width: mm(20.0), height: mm(30.0) };
    for (solid, area, space) in [
        (block, 2200.0, 6000.0),
        (Solid::Sphere { diameter: mm(20.0) }, 1256.637, 4188.790),
        (ring, 5654.867 + 1884.956, 28_274.33),
        (plate, 100_000.0 + 2000.0, 100_000.0),
    ] {
        near(surface_area(&mut Silent, &solid).unwrap().get::<square_millimeter>(), area, 1e-6);
        near(volume(&mut Silent, &solid).unwrap().get::<cubic_millimeter>(), space, 1e-6);
    }
    let no_wall = Solid::Tube { outside: mm(20.0), bore: mm(20.0), length: mm(30.0) };
    assert!(matches!(surface_area(&mut Silent, &no_wall), Err(FormulaError::NotLess { .. })));
    assert!(matches!(volume(&mut Silent, &Solid::Sphere { diameter: mm(0.0) }), Err(FormulaError::NotPositive { .. })));
    let textured = |texture| textured_area(&mut Silent, Area::new::<square_meter>(1.0), texture).get::<square_meter>();
    // Common practice, no source.
    for (texture, times) in [(Texture::Smooth, 1.0), (Texture::Knurled, 1.4), (Texture::Threaded, 1.6)] {
        near(textured(texture), times, 1e-12);
    }
}

/// By hand: what 5 µm do to each face; a bore and a nut close.
#[test]
fn a_coat_on_each_face() {
    for (face, laid_on) in [(Face::Shaft, 10.0), (Face::Bore, -10.0), (Face::ExternalThread, 20.0), (Face::InternalThread, -20.0)] {
        let change = size_change(&mut Silent, face, um(5.0)).unwrap();
        near(change.laid_on.get::<micrometer>(), laid_on, 1e-9);
        near(change.grown.get::<micrometer>(), laid_on / 2.0, 1e-9);
    }
}

/// By hand: 2.5 µm of black oxide on a thread with 40 µm of tolerance adds 10 µm, or 5 where it grows out of the metal.
#[test]
fn a_coat_against_its_tolerance() {
    let thread = size_change(&mut Silent, Face::ExternalThread, um(2.5)).unwrap();
    let laid_on = tolerance_use(&mut Silent, thread.laid_on, um(40.0)).unwrap();
    let grown = tolerance_use(&mut Silent, thread.grown, um(40.0)).unwrap();
    near(laid_on.share.get::<percent>(), 25.0, 1e-9);
    near(grown.share.get::<percent>(), 12.5, 1e-9);
    assert!(laid_on.too_much && !grown.too_much);
}

/// By hand: the tank of the worked case, its rim 124 mm high, leaves 29 mm; one of 125 mm leaves the 30 that are asked.
#[test]
fn a_tank_too_full_is_refused() {
    let tank = Tank::Box { length: mm(300.0), width: mm(200.0) };
    let density = MassDensity::new::<kilogram_per_cubic_meter>(7850.0);
    let part = Immersed { height: mm(60.0), mass: Mass::new::<kilogram>(1.5), density };
    let bath = |rim, work_asks| immersion(&mut Silent, &tank, mm(rim), &part, litres(work_asks));
    assert!(refused(&bath(124.0, 0.0)));
    assert!(bath(125.001, 0.0).is_ok());
    // 7 L and the 0.191 L of the part stand 119.85 mm high on 0.06 m².
    let filled = bath(150.0, 7.0).unwrap();
    near(filled.level.get::<millimeter>(), 119.85, 1e-4);
    near(filled.freeboard.get::<millimeter>(), 30.15, 1e-3);
    assert!(refused(&bath(149.0, 7.0)));
}

/// By hand: a bar of 20 × 100 mm with 10 mm of room stands on a round floor of 40 mm, and a disc of 100 × 5 mm on its edge.
#[test]
fn parts_stand_where_they_take_least_floor() {
    let stand =
        |diameter, length| best_stance(&mut Silent, &Solid::Cylinder { diameter: mm(diameter), length: mm(length) }, mm(10.0)).unwrap();
    let bar = stand(20.0, 100.0);
    assert!(matches!(bar.tank, Tank::Round { .. }) && bar.height == mm(100.0));
    near(bar.floor.get::<square_millimeter>(), 1256.637, 1e-6);
    let disc = stand(100.0, 5.0);
    assert!(matches!(disc.tank, Tank::Box { .. }) && disc.height == mm(100.0));
    near(disc.floor.get::<square_millimeter>(), 25.0 * 120.0, 1e-9);
}

/// Common practice: each grit at most twice as fine as the one before; by hand, a third of 125, 82, 46.2, 25.8 and 15.3 µm is 98.1 µm.
#[test]
fn grits_follow_one_another() {
    let rubbing = grit_sequence(&mut Silent, 120, 2000).unwrap();
    assert_eq!(rubbing.steps.iter().map(|step| step.grit).collect::<Vec<_>>(), [120, 180, 320, 600, 1200, 2000]);
    near(rubbing.takes_off.get::<micrometer>(), 98.1, 1e-3);
    for (from, (first, _)) in GRITS.iter().enumerate() {
        for (last, _) in &GRITS[from..] {
            let steps = grit_sequence(&mut Silent, *first, *last).unwrap().steps;
            assert_eq!((steps[0].grit, steps[steps.len() - 1].grit), (*first, *last));
            assert!(steps.windows(2).all(|pair| pair[0].grain <= 2.0 * pair[1].grain));
        }
    }
    assert!(refused(&grit_sequence(&mut Silent, 400, 120)) && refused(&grit_sequence(&mut Silent, 150, 400)));
}

/// Published tables of sulfuric acid at 20 °C, *from memory*: rows that the program's table does not hold.
#[test]
fn density_of_sulfuric_acid_between_the_rows() {
    for (strength, density) in [(12.0, 1.0802), (26.0, 1.1862), (36.0, 1.2684), (62.0, 1.5200), (93.0, 1.8279), (98.0, 1.8361)] {
        let found = sulfuric_density(&mut Silent, share(strength)).unwrap().get::<gram_per_cubic_centimeter>();
        assert!((found - density).abs() < 0.001, "{strength} %: {found}");
    }
}

/// Thomsen's formula for the heat of dilution, 74.73·r/(r + 1.798) kJ/mol, *from memory*: within 6 % of the rows of the tables from
/// r = 0.5 to 100; between rows 7 % are allowed, and of a difference of two 7 % of their sum. The specific heats are rows of
/// the table, so that only the heat is compared.
#[test]
fn sulfuric_acid_warms_as_thomsen_found() {
    let thomsen = |w: f64| {
        let r = (100.0 - w) / w * 98.079 / 18.015;
        74.73 * r / (r + 1.798)
    };
    for (from, to, specific_heat) in [(96.0, 9.82, 3.840), (96.0, 21.4, 3.489), (78.0, 30.34, 3.199), (96.0, 37.69, 2.938)] {
        let kelvins = |heat: f64| 10.0 * to / 98.079 * heat / specific_heat;
        let found = sulfuric_rise(&mut Silent, share(from), share(to)).unwrap().get::<kelvin>();
        let off = (found - kelvins(thomsen(to) - thomsen(from))).abs();
        assert!(off <= kelvins(0.07 * (thomsen(to) + thomsen(from))), "{from} to {to} %: {found} K");
    }
}

/// What cannot be mixed safely is refused, what can is told how; acid into water is said every time.
#[test]
fn hot_mixtures() {
    let mut notebook = Notebook::new();
    let from_strong = sulfuric_dilution(&mut notebook, litres(1.0), share(96.0), share(37.0), celsius(20.0));
    assert!(refused(&from_strong));
    let says = |notebook: &Notebook, words: &str| {
        notebook.cautions().any(|caution| matches!(caution, Caution::Danger { words: said } if said.contains(words)))
    };
    assert!(says(&notebook, "acid into cold water"));
    let mut notebook = Notebook::new();
    let weak = sulfuric_dilution(&mut notebook, litres(1.0), share(37.0), share(10.0), celsius(20.0)).unwrap();
    assert!(says(&notebook, "acid into cold water"));
    assert!((weak.mixing.portions - 1.0).abs() < 1e-12);
    // By hand: 15 °C and 40 K make 55 °C, in two portions of 20 K; 46 K make 61 °C.
    let warm = mixing(&mut Silent, celsius(15.0), warmer(40.0)).unwrap();
    assert!((warm.reaches.get::<degree_celsius>() - 55.0).abs() < 1e-9 && (warm.portions - 2.0).abs() < 1e-12);
    assert!(refused(&mixing(&mut Silent, celsius(15.0), warmer(46.0))));
    assert!(matches!(mixing(&mut Silent, celsius(45.0), warmer(1.0)), Err(FormulaError::OutOfRange { .. })));
    // Common practice: a third of caustic soda boils.
    assert!(refused(&caustic_solution(&mut Silent, grams(1000.0), share(30.0), celsius(15.0))));
    let (mix, mixing) = caustic_solution(&mut Silent, grams(1000.0), share(5.0), celsius(15.0)).unwrap();
    near(mix.concentrate.get::<gram>(), 50.0, 1e-9);
    assert!((mixing.portions - 1.0).abs() < 1e-12);
}

/// Computed independently: a litre of 37 % holds 493 g of acid of 96 %.
#[test]
fn acid_in_a_litre_of_battery_acid() {
    let density = sulfuric_density(&mut Silent, share(37.0)).unwrap();
    let litre: Mass = density * litres(1.0);
    let mix = dilution(&mut Silent, litre, share(96.0), share(37.0)).unwrap();
    assert!((mix.concentrate.get::<gram>() - 493.0).abs() < 5.0);
}

/// Published, *from memory*: a tenth of caustic soda by mass warms its water by some 28 K.
#[test]
fn caustic_soda_warms() {
    assert!((caustic_rise(&mut Silent, share(10.0)).unwrap().get::<kelvin>() - 28.0).abs() < 2.0);
}

/// Computed independently: sulfuric acid of 10 % has an ideal pH of about 0.
#[test]
fn sulfuric_acid_is_sourest() {
    let ten = |acid| ideal_ph(&mut Silent, acid, share(10.0)).unwrap();
    assert!(ten(Acid::Sulfuric).abs() < 0.1);
    assert!(ten(Acid::Sulfuric) < ten(Acid::Bisulfate) && ten(Acid::Bisulfate) < ten(Acid::Citric));
}

/// Computed independently: 100 g of sulfuric acid take 171 g of bicarbonate and give 49 L of gas at 20 °C, 10 g of bicarbonate 2.9 L.
#[test]
fn ending_sulfuric_acid() {
    let end = neutralise(&mut Silent, Acid::Sulfuric, grams(100.0), litres(2.0), celsius(20.0)).unwrap();
    near(end.bicarbonate.get::<gram>(), 171.0, 0.01);
    near(end.gas.get::<liter>(), 49.0, 0.01);
    near(end.gas_each.get::<liter>(), 2.9, 0.02);
    near(end.vessel.get::<liter>(), 6.0, 1e-9);
    assert!((end.additions - 18.0).abs() < 1e-12);
}

/// Common practice: a pickle of a strength nobody uses is refused, and steel tools are warned of; a mole balance of CuO against its
/// oxide (by hand: 79.545 g of oxide hold 63.546 g, and use 98.079 g of sulfuric acid).
#[test]
fn pickles() {
    let mut notebook = Notebook::new();
    assert!(pickle_bath(&mut notebook, Acid::Citric, litres(1.0), share(100.0), share(10.0), celsius(15.0)).is_ok());
    assert!(notebook.cautions().any(|caution| matches!(caution, Caution::Danger { words } if words.contains("Never steel"))));
    for acid in Acid::ALL {
        let (_, most) = usual_strength(acid);
        let strong = pickle_bath(&mut Silent, acid, litres(1.0), share(100.0), share(most + 1.0), celsius(15.0));
        assert!(matches!(strong, Err(FormulaError::OutOfRange { .. })));
    }
    let ten = copper_limit(&mut Silent, Acid::Sulfuric, share(10.0)).unwrap();
    let acid_g_per_l = 106.6;
    near(ten.all.get::<kilogram_per_cubic_meter>(), acid_g_per_l / 98.079 * 63.546, 0.001);
    near((ten.retire / ten.all).get::<ratio>(), 0.3, 1e-9);
    // By hand: 6.0 g/cm³ of Cu₂O, 1 µm on 1 m² is 6 g, of which 88.8 % are copper.
    near(oxide_copper(&mut Silent, Oxide::Red, Area::new::<square_meter>(1.0), um(1.0)).unwrap().get::<gram>(), 5.329, 0.001);
}

/// Computed independently: half a kilogram from 820 °C in 2 L of oil of 25 °C brings it to 97 °C.
#[test]
fn a_bath_too_small() {
    let end = bath_after(&mut Silent, &hot(0.5, 820.0), &Liquid::oil(), litres(2.0), celsius(25.0)).unwrap();
    assert!((end.get::<degree_celsius>() - 97.0).abs() < 4.0);
    // Common practice: 50 K below the flash point.
    assert!(flash_margin(&mut Silent, end, celsius(180.0)).is_ok());
    assert!(refused(&flash_margin(&mut Silent, end, celsius(140.0))));
    assert!(refused(&flash_margin(&mut Silent, celsius(f64::NAN), celsius(140.0))));
}

/// From memory of the JANAF tables: iron takes 900 J/mol as it turns to austenite at 912 °C, and 25.1 J/(mol·K) at 25 °C.
#[test]
fn iron_takes_up_its_heat() {
    let heat = |at: f64| iron_heat_kj_per_kg(&mut Silent, celsius(at)).unwrap();
    near(heat(26.0) - heat(25.0), 0.4494, 0.005);
    let turning = heat(911.9) - heat(911.8);
    assert!(turning > 5.0 && turning < 20.0, "{turning}");
    assert!(matches!(iron_heat_kj_per_kg(&mut Silent, celsius(1600.0)), Err(FormulaError::OutOfRange { .. })));
}

/// A ball of 40 mm has not one temperature throughout where its surface gives up heat fast; a small one never passes its bath.
#[test]
fn lumps() {
    let ball = |diameter: f64, film: f64| {
        let solid = Solid::Sphere { diameter: mm(diameter) };
        Lump {
            volume: volume(&mut Silent, &solid).unwrap(),
            surface: surface_area(&mut Silent, &solid).unwrap(),
            density: MassDensity::new::<kilogram_per_cubic_meter>(7850.0),
            specific_heat_j_per_kg_k: 490.0,
            conductivity_w_per_m_k: 45.0,
            film_w_per_m2_k: film,
            start: celsius(800.0),
            around: celsius(40.0),
        }
    };
    let late = Time::new::<second>(10.0);
    assert!(matches!(temperature_after(&mut Silent, &ball(40.0, 1000.0), late), Err(FormulaError::OutOfRange { .. })));
    let small = ball(5.0, 600.0);
    for never in [900.0, 40.0, 20.0] {
        assert!(refused(&time_to(&mut Silent, &small, celsius(never))));
    }
}

/// Common practice: of two packs that cost the same for what is used, the smaller; what is thrown away costs too.
#[test]
fn choosing_packs() {
    let offer = |size: f64, price: f64, used: f64| {
        let [size, used] = [size, used].map(Volume::new::<milliliter>);
        Offer { size, price, use_of_it: PackUse { used, wasted: size - used } }
    };
    let place = |offers: &[Offer], disposal| cheapest_pack(&mut Silent, offers, disposal).unwrap().map(|choice| choice.place);
    assert_eq!(place(&[offer(1000.0, 20.0, 1000.0), offer(500.0, 10.0, 500.0)], 0.0), Some(1));
    assert_eq!(place(&[offer(500.0, 10.0, 500.0), offer(1000.0, 20.0, 1000.0)], 0.0), Some(0));
    let offers = [offer(1000.0, 14.0, 300.0), offer(250.0, 12.0, 250.0)];
    assert_eq!(place(&offers, 0.0), Some(0));
    assert_eq!(place(&offers, 5.0), Some(1));
    assert_eq!(place(&[offer(500.0, 10.0, 0.0)], 0.0), None);
    assert!(matches!(containment(&mut Silent, litres(5.0), litres(4.0)), Err(FormulaError::OutOfRange { .. })));
    // By hand: 60 K of 2·10⁻³ per kelvin grow by 12 %, more than the twentieth.
    near(fill_limit(&mut Silent, litres(1.0), 2e-3, warmer(60.0)).unwrap().get::<liter>(), 1.0 / 1.12, 1e-9);
}

proptest! {
    #[test]
    fn a_thicker_coat_never_leaves_more_clearance(t in 0.0..100.0, more in 0.0..50.0) {
        for (outer, inner) in [(Face::Bore, Face::Shaft), (Face::InternalThread, Face::ExternalThread)] {
            let change = |face, t: f64| size_change(&mut Silent, face, um(t)).unwrap();
            let left = |t: f64| {
                let (outer, inner) = (change(outer, t), change(inner, t));
                [outer.laid_on - inner.laid_on, outer.grown - inner.grown]
            };
            let (thin, thick) = (left(t), left(t + more));
            prop_assert!(thick[0] <= thin[0] && thick[1] <= thin[1] && thin[0] <= thin[1]);
        }
    }

    #[test]
    fn a_coat_takes_more_the_more_misses(dry in 0.0..100.0, solids in 1.0..100.0, less in 0.0..0.9) {
        let takes = |solids: Range<Ratio>, how| coat_volume(&mut Silent, Area::new::<square_meter>(1.0), um(dry), solids, how).unwrap();
        let wide = Range { low: share(f64::max(solids * (1.0 - less), 1.0)), likely: share(solids), high: share(solids) };
        for how in [Application::Wipe, Application::Brush, Application::Aerosol] {
            let found = takes(wide, how);
            prop_assert!(found.low <= found.likely && found.likely <= found.high);
            prop_assert!(found.low.get::<milliliter>() >= dry * 0.999_999);
        }
        prop_assert!(takes(wide, Application::Aerosol).likely >= takes(wide, Application::Wipe).likely);
    }

    #[test]
    fn a_bath_holds_what_its_work_asks(area in 0.001..1.0, t in 0.1..3.0) {
        let usable = MassDensity::new::<kilogram_per_cubic_meter>(2.5);
        let bath = |area: f64| blackening(&mut Silent, Area::new::<square_meter>(area), um(t), usable).unwrap();
        prop_assert!((bath(2.0 * area).bath - 2.0 * bath(area).bath).abs() < litres(1e-9));
        prop_assert!((bath(area).selenium - usable * bath(area).bath).abs() < grams(1e-9));
    }

    #[test]
    fn dilution_conserves_acid(m in 0.0..10_000.0, from in 0.1..100.0, of_it in 0.0..1.0) {
        let to = from * of_it;
        let mix = dilution(&mut Silent, grams(m), share(from), share(to)).unwrap();
        let acid = |mass: Mass, strength: f64| mass.get::<gram>() * strength / 100.0;
        prop_assert!((acid(mix.concentrate, from) - acid(grams(m), to)).abs() < 1e-9 * m.max(1.0));
        prop_assert!((mix.concentrate + mix.water - grams(m)).abs() < grams(1e-9 * m.max(1.0)));
        prop_assert!(mix.water >= grams(-1e-9 * m.max(1.0)));
    }

    #[test]
    fn stronger_acid_never_warms_less(from in 40.0..98.0, part in 0.1..0.9, to in 1.0..10.0) {
        let half = to + (from - to) * part;
        let rise = |from: f64, to: f64| sulfuric_rise(&mut Silent, share(from), share(to)).unwrap().get::<kelvin>();
        prop_assert!(rise(from, to) >= rise(half, to) - 1e-9 && rise(half, to) >= -1e-9);
    }

    #[test]
    fn portions_stay_cool(start in 0.0..40.0, rise in 0.0..60.0) {
        match mixing(&mut Silent, celsius(start), warmer(rise)) {
            Ok(found) => {
                prop_assert!(start + rise / found.portions <= 50.0 + 1e-9);
                prop_assert!((found.portions > 1.0) == (start + rise > 50.0 + 1e-9) || (start + rise - 50.0).abs() < 1e-6);
            }
            Err(_) => prop_assert!(start + rise > 60.0 - 1e-9),
        }
    }

    #[test]
    fn stronger_acid_is_sourer_and_holds_more_copper(w in 0.2..18.0, more in 0.0..2.0) {
        for acid in Acid::ALL {
            let ph = |w: f64| ideal_ph(&mut Silent, acid, share(w)).unwrap();
            let copper = |w: f64| copper_limit(&mut Silent, acid, share(w)).unwrap().all;
            prop_assert!(ph(w + more) <= ph(w) + 1e-9 && copper(w + more) >= copper(w));
        }
    }

    #[test]
    fn another_rinse_never_leaves_more(clings in 0.0..200.0, bath in 1.0..2000.0, baths in 0_u32..6) {
        let left = |baths| rinse_residue(&mut Silent, Volume::new::<milliliter>(clings), Volume::new::<milliliter>(bath), baths).unwrap();
        prop_assert!(left(baths + 1) <= left(baths) && left(0) == share(100.0));
    }

    #[test]
    fn parts_mixed_are_never_more_than_parts_of_the_whole(a in 0.1..10.0, b in 0.0..100.0) {
        let found = parts_share(&mut Silent, a, a + b).unwrap();
        prop_assert!(found.mixed < found.of_whole && found.of_whole <= share(100.0 + 1e-9));
    }

    #[test]
    fn hotter_iron_never_holds_less(at in -20.0..1500.0, more in 0.0..35.0) {
        let heat = |at: f64| iron_heat_kj_per_kg(&mut Silent, celsius(at)).unwrap();
        prop_assert!(heat(at + more) >= heat(at));
    }

    #[test]
    fn more_hot_steel_never_takes_less_oil(m in 0.01..5.0, more in 0.0..2.0, at in 700.0..900.0, rise in 5.0..40.0) {
        let oil = |m: f64, at: f64| oil_volume(&mut Silent, &hot(m, at), &Liquid::oil(), celsius(25.0), warmer(rise)).unwrap();
        prop_assert!(oil(m + more, at).needed >= oil(m, at).needed && oil(m, at + 20.0).needed >= oil(m, at).needed);
        prop_assert!(oil(m, at).needed >= oil(m, at).by_rule && oil(m, at).needed >= oil(m, at).by_heat);
    }

    /// The bath that is worked out for a rise rises so far.
    #[test]
    fn a_bath_for_a_rise_rises_so_far(m in 0.01..5.0, at in 700.0..900.0, rise in 5.0..40.0) {
        for liquid in [Liquid::oil(), Liquid::water(), Liquid::brine()] {
            let bath = volume_for_rise(&mut Silent, &hot(m, at), &liquid, celsius(20.0), warmer(rise)).unwrap();
            let end = bath_after(&mut Silent, &hot(m, at), &liquid, bath, celsius(20.0)).unwrap();
            prop_assert!((end.get::<degree_celsius>() - 20.0 - rise).abs() < 1e-6);
        }
    }

    #[test]
    fn a_vessel_covers_its_part(v in 0.5..50.0, part in 10.0..500.0, floor in 0.005..0.2) {
        let found = quench_vessel(&mut Silent, litres(v), mm(part), Area::new::<square_meter>(floor)).unwrap();
        let slack = mm(1e-6);
        prop_assert!(found.depth >= mm(part + 100.0) - slack && found.liquid >= litres(v - 1e-9));
        prop_assert!(found.height >= found.depth + mm(150.0) - slack && found.height >= 1.5 * found.depth - slack);
    }

    #[test]
    fn a_larger_pack_wastes_no_less(times in 0.0..60.0, each in 1.0..100.0, pack in 50.0..2000.0, more in 0.0..1000.0, keeps in 10.0..800.0) {
        let demand = Demand { times_a_year: times, each: Volume::new::<milliliter>(each) };
        let found = |pack: f64| pack_use(&mut Silent, &demand, Volume::new::<milliliter>(pack), Time::new::<day>(keeps)).unwrap();
        let (small, large) = (found(pack), found(pack + more));
        let slack = Volume::new::<milliliter>(1e-6);
        prop_assert!(large.wasted >= small.wasted - slack && large.used >= small.used - slack);
        prop_assert!((small.used + small.wasted - Volume::new::<milliliter>(pack)).abs() < slack);
        // No more can be used than is wanted, on average.
        prop_assert!(large.used.get::<milliliter>() <= times * each * keeps / 365.0 + 1e-6);
    }

    #[test]
    fn surer_service_never_asks_less(times in 0.0..200.0, days in 1.0..365.0, service in 0.0..0.999, more in 0.0..1.0) {
        let demand = Demand { times_a_year: times, each: Volume::new::<milliliter>(10.0) };
        let uses = |service: f64| {
            reorder_point(&mut Silent, &demand, Time::new::<day>(days), Ratio::new::<ratio>(service)).unwrap().uses
        };
        prop_assert!(uses(service + more * (0.999 - service)) >= uses(service));
    }
}
