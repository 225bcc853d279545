//! Laws of lubricants and coolants that hold whatever the numbers, beside those in `laws.rs`.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

use formulas::feed::{GradeChoice, HotAndCold, Wick, coldest_start, grade_for, wick_feed};
use formulas::film::{LineContact, film_parameter, film_state, line_film};
use formulas::gear::{Mesh, agma_grade, gear_opinions};
use formulas::grease::Nlgi;
use formulas::lubricant_form::{Facts, Reach, Standing, form};
use formulas::plain_bearing::{Cooling, Journal, Oil, film_bracket, film_flow, heat_balance, minimum_film, sommerfeld};
use formulas::rolling_bearing::{Fatigue, Rolling, life_modification};
use formulas::saybolt::{Furol, saybolt_furol, saybolt_universal, viscosity_from_furol, viscosity_from_universal};
use formulas::slideway::{SlideOil, StickSlip, Way, WearSurface, stick_slip, way_viscosity};
use formulas::steam_cylinder::{Steam, cylinder_oil};
use formulas::sump::{concentration_from_reading, steady_top_up};
use formulas::viscosity::{Measured, viscosity_at};
use formulas::viscosity_index::viscosity_100_from_index;
use formulas::{FormulaError, Notebook, Silent};
use proptest::prelude::*;
use units::{
    AngularVelocity, Area, DynamicViscosity, Force, KinematicViscosity, Length, MassDensity, Pressure, Ratio, Temperature, Velocity,
    VolumeRate,
};
use uom::si::angular_velocity::revolution_per_minute as rpm;
use uom::si::area::{square_meter, square_millimeter};
use uom::si::dynamic_viscosity::millipascal_second;
use uom::si::force::newton;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::{micrometer, millimeter};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{bar, gigapascal, megapascal};
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
use uom::si::velocity::{meter_per_second, millimeter_per_minute};
use uom::si::volume_rate::liter_per_second;

fn nu(value: f64) -> KinematicViscosity {
    KinematicViscosity::new::<mm2_per_s>(value)
}

fn celsius(value: f64) -> Temperature {
    Temperature::new::<degree_celsius>(value)
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn um(value: f64) -> Length {
    Length::new::<micrometer>(value)
}

fn mpas(value: f64) -> DynamicViscosity {
    DynamicViscosity::new::<millipascal_second>(value)
}

fn journal() -> impl Strategy<Value = Journal> {
    (8.0..60.0, 0.3..1.0, 20.0..1500.0, 50.0..2000.0, 0.0008..0.004).prop_map(|(d, ratio, load, speed, clearance)| Journal {
        diameter: mm(d),
        length: mm(d * ratio),
        load: Force::new::<newton>(load),
        speed: AngularVelocity::new::<rpm>(speed),
        clearance: mm(d * clearance),
        journal_roughness: um(0.4),
        bearing_roughness: um(0.8),
    })
}

fn oil(nu40: f64) -> Oil {
    let nu100 = viscosity_100_from_index(&mut Silent, nu(nu40), 95.0).unwrap();
    Oil { cool: Measured::at_40(nu(nu40)), hot: Measured::at_100(nu100), density_15: MassDensity::new::<kilogram_per_cubic_meter>(880.0) }
}

proptest! {
    #[test]
    fn saybolt_and_back(log in 1.82_f64.ln()..1e5_f64.ln(), t in 50.0..250.0, more in 1.001..2.0) {
        let at = Temperature::new::<degree_fahrenheit>(t);
        let nu_1 = nu(log.exp());
        let seconds = saybolt_universal(&mut Silent, nu_1, at).unwrap();
        let back = viscosity_from_universal(&mut Silent, seconds, at).unwrap();
        prop_assert!(((back / nu_1).value - 1.0).abs() < 1e-8);
        prop_assert!(saybolt_universal(&mut Silent, nu_1 * more, at).unwrap() > seconds);
        for furol in [Furol::At122F, Furol::At210F] {
            if nu_1 > nu(53.0) {
                let seconds = saybolt_furol(&mut Silent, nu_1, furol).unwrap();
                let back = viscosity_from_furol(&mut Silent, seconds, furol).unwrap();
                prop_assert!(((back / nu_1).value - 1.0).abs() < 1e-8, "{furol:?} {nu_1:?}");
            }
        }
    }

    #[test]
    fn a_thicker_cleaner_lighter_bearing_lives_no_shorter(
        kappa in 0.1..5.0, e in 0.0..0.95, load in 100.0..10_000.0, up in 1.0..2.0, balls in any::<bool>(),
    ) {
        let rolling = if balls { Rolling::Balls } else { Rolling::Rollers };
        let life = |kappa: f64, contamination: f64, load: f64| life_modification(&mut Silent, kappa, &Fatigue {
            rolling, contamination, limit: Force::new::<newton>(400.0), load: Force::new::<newton>(load),
        }).unwrap();
        let here = life(kappa, e, load);
        // At κ = 0.1 the rounded constants of the rollers lie a hair below their own limit.
        let slack = 1.0 - 1e-3;
        prop_assert!(here >= 0.1 * slack && here <= 50.0);
        prop_assert!(life(kappa * up, e, load) >= here * slack);
        prop_assert!(life(kappa, e + 0.05, load) >= here * slack);
        prop_assert!(life(kappa, e, load * up) <= here / slack);
    }

    #[test]
    fn a_shorter_bearing_under_the_same_pressure_has_less_film(journal in journal(), eta in 2.0..400.0, shorter in 0.85..0.99) {
        // What is compared lies between a quarter and one diameter.
        prop_assume!((journal.length / journal.diameter).value * shorter >= 0.25);
        let short = Journal { length: journal.length * shorter, load: journal.load * shorter, ..journal };
        let film = |journal: &Journal| minimum_film(&mut Silent, journal, mpas(eta)).unwrap();
        prop_assert!(film(&short) <= film(&journal) * (1.0 + 1e-9));
    }

    #[test]
    fn a_long_bearing_lies_in_its_bracket(journal in journal(), eta in 2.0..400.0, ratio in 1.0..2.0) {
        let long = Journal { length: journal.diameter * ratio, ..journal };
        let film = film_bracket(&mut Silent, &long, mpas(eta)).unwrap();
        prop_assert!(film.low <= film.likely && film.likely <= film.high && film.high <= journal.clearance / 2.0);
        let charted = minimum_film(&mut Silent, &long, mpas(eta)).unwrap();
        prop_assert!(((charted / film.low).value - 1.0).abs() < 1e-9);
        prop_assert!(sommerfeld(&mut Silent, &long, mpas(eta)).unwrap() > 0.0);
    }

    #[test]
    fn what_leaves_sideways_is_part_of_what_comes(journal in journal(), eta in 2.0..400.0, more in 1.0..4.0) {
        let flow = film_flow(&mut Silent, &journal, mpas(eta)).unwrap();
        prop_assert!(flow.sideways <= flow.through && flow.share >= 0.0 && flow.share < 1.0);
        // The more it is loaded, the larger the share that is pressed out.
        let loaded = film_flow(&mut Silent, &Journal { load: journal.load * more, ..journal }, mpas(eta)).unwrap();
        prop_assert!(loaded.share >= flow.share - 1e-12);
    }

    #[test]
    fn more_cooling_is_never_hotter(journal in journal(), grade in prop::sample::select(vec![22.0, 32.0, 46.0, 68.0, 100.0]), more in 1.05..3.0, room in 5.0..35.0) {
        let at = |area: f64, room: f64| heat_balance(&mut Silent, &journal, &oil(grade), &Cooling::ByHousing {
            area: Area::new::<square_meter>(area), coefficient: 15.0, oil_to_housing: 1.0, room: celsius(room),
        });
        match (at(0.02, room), at(0.02 * more, room), at(0.02, room + 3.0)) {
            (Ok(here), Ok(cooler), Ok(warmer)) => {
                prop_assert!(cooler.film <= here.film && cooler.minimum_film >= here.minimum_film * (1.0 - 1e-9));
                prop_assert!(warmer.film >= here.film);
                prop_assert!(here.film >= celsius(room - 1e-9));
            }
            // Only what overheats is refused, and more cooling never makes it so.
            (Ok(_), Err(error), _) => prop_assert!(false, "{error}"),
            (Err(FormulaError::NoRoot { .. } | FormulaError::OutOfRange { .. }), _, _) | (Ok(_), Ok(_), Err(_)) => {}
            (Err(other), _, _) => prop_assert!(false, "{other}"),
        }
    }

    #[test]
    fn a_faster_or_thicker_line_floats_higher(u in 0.05..10.0, eta in 2.0..500.0, w in 10.0..5000.0, more in 1.01..3.0) {
        let film = |u: f64, eta: f64, w: f64| line_film(&mut Silent, &LineContact {
            speed: Velocity::new::<meter_per_second>(u), viscosity: mpas(eta), pressure_coefficient_per_pa: 18e-9,
            modulus: Pressure::new::<gigapascal>(226.0), radius: mm(8.0), load: Force::new::<newton>(w), length: mm(10.0),
        }).unwrap();
        let here = film(u, eta, w);
        prop_assert!(film(u * more, eta, w) > here && film(u, eta * more, w) > here && film(u, eta, w * more) < here);
        let lambda = |film| film_parameter(&mut Silent, film, um(0.2), um(0.4)).unwrap();
        prop_assert!(film_state(lambda(here * more)) >= film_state(lambda(here)));
    }

    #[test]
    fn all_gear_opinions_lie_in_their_span(force in 10.0..5000.0, v in 0.5..20.0, air in -10.0..54.0, warmer in 0.0..20.0) {
        let mesh = Mesh {
            force: Force::new::<newton>(force), face: mm(20.0), pinion: mm(50.0), ratio: 3.0,
            speed: Velocity::new::<meter_per_second>(v), application: 1.25,
        };
        let found = gear_opinions(&mut Silent, &mesh, celsius(air)).unwrap();
        for opinion in [found.by_load_and_speed.low, found.by_load_and_speed.high, nu(found.by_speed_and_air.grade)] {
            prop_assert!(opinion >= found.all.low * (1.0 - 1e-12) && opinion <= found.all.high * (1.0 + 1e-12));
        }
        prop_assert!(found.all.low <= found.all.likely && found.all.likely <= found.all.high);
        // Warmer air never asks for thinner oil, nor a faster gear for thicker.
        let grade = |v: f64, air: f64| agma_grade(&mut Silent, Velocity::new::<meter_per_second>(v), celsius(air.min(55.0))).unwrap().grade;
        prop_assert!(grade(v, air + warmer) >= grade(v, air) && grade(v * 2.0, air) <= grade(v, air));
    }

    #[test]
    fn the_grade_chosen_serves(needed in 5.0..300.0, running in 20.0..90.0, ceiling in 150.0..5000.0, coldest in -5.0..18.0) {
        let place = HotAndCold { needed: nu(needed), running: celsius(running), ceiling: nu(ceiling), coldest: celsius(coldest) };
        let at = |grade: f64, t: f64| viscosity_at(&mut Silent, oil(grade).cool, oil(grade).hot, celsius(t)).unwrap();
        match grade_for(&mut Silent, &place, 95.0).unwrap() {
            GradeChoice::Serves(grade) => {
                prop_assert!(at(grade, running) >= place.needed && at(grade, coldest) <= place.ceiling * (1.0 + 1e-9));
            }
            GradeChoice::TooThickCold { grade, passes_from } => {
                prop_assert!(at(grade, running) >= place.needed && at(grade, coldest) > place.ceiling && passes_from > place.coldest);
                let again = coldest_start(&mut Silent, oil(grade).cool, oil(grade).hot, place.ceiling, None).unwrap();
                prop_assert_eq!(again.at, passes_from);
            }
            GradeChoice::None => prop_assert!(at(3200.0, running) < place.needed),
        }
    }

    #[test]
    fn a_wick_slows_with_thickness_and_length(q in 0.1..60.0, nu_0 in 10.0..500.0, more in 1.01..5.0) {
        let wick = |viscosity: f64, length: f64| Wick { section: Area::new::<square_millimeter>(10.0), length: mm(length), viscosity: nu(viscosity) };
        let feed = |viscosity, length| wick_feed(&mut Silent, &wick(nu_0, 80.0), q, &wick(viscosity, length)).unwrap();
        prop_assert!((feed(nu_0, 80.0) / q - 1.0).abs() < 1e-9);
        prop_assert!(feed(nu_0 * more, 80.0) < q && feed(nu_0, 80.0 * more) < q);
    }

    #[test]
    fn a_taller_way_holds_its_film_on_thinner_oil(z in 0.05..2.0, more in 1.0..3.0) {
        let asked = |z: f64| way_viscosity(&mut Silent, &Way {
            pressure: Pressure::new::<megapascal>(0.05), speed: None, upright: Some(mm(1000.0 * z)),
        }).unwrap();
        // The film is thinnest at its upper edge; lower down more comes after.
        prop_assert!(asked(z * more).likely <= asked(z).likely);
        let range = asked(z);
        prop_assert!(range.low <= range.likely && range.likely <= range.high);
    }

    #[test]
    fn faster_slides_never_jerk_more(v in 0.1..1000.0, more in 1.0..20.0) {
        for surface in [WearSurface::CastIron, WearSurface::HardenedSteel, WearSurface::Bronze, WearSurface::Resin, WearSurface::Ptfe] {
            let jerks = |v: f64, oil| stick_slip(&mut Silent, Velocity::new::<millimeter_per_minute>(v), surface, oil);
            prop_assert!(jerks(v * more, SlideOil::Plain) <= jerks(v, SlideOil::Plain));
            prop_assert!(jerks(v, SlideOil::Slideway) <= jerks(v, SlideOil::Plain));
            prop_assert!(jerks(v, SlideOil::Plain) <= StickSlip::Likely);
        }
    }

    #[test]
    fn hotter_steam_never_takes_thinner_oil(p in 0.0..18.0, more in 0.0..2.0) {
        let oil = |p: f64| cylinder_oil(&mut Silent, Pressure::new::<bar>(p), Steam::Dry).unwrap();
        prop_assert!(oil(p + more).grades.likely >= oil(p).grades.likely && oil(p + more).flash >= oil(p).flash);
        let grades = oil(p).grades;
        prop_assert!(grades.low <= grades.likely && grades.likely <= grades.high);
    }

    #[test]
    fn topping_up_for_good_keeps_the_mix(c in 2.0..12.0, off in 0.0..2.0, gone in 0.01..2.0) {
        let flow = |litres: f64| VolumeRate::new::<liter_per_second>(litres / 86_400.0);
        let top = steady_top_up(&mut Silent, Ratio::new::<percent>(c), flow(off), flow(gone)).unwrap().get::<percent>();
        prop_assert!(top >= 1.0 - 1e-12 && top <= c + 1e-9);
        // Concentrate carried off is concentrate added, unless the least mix adds more.
        prop_assert!(top * (off + gone) >= c * off - 1e-9);
        prop_assert!(top <= 1.0 + 1e-9 || (top * (off + gone) - c * off).abs() < 1e-9);
    }

    #[test]
    fn the_refractometer_reads_straight(b in 0.0..20.0, f in 0.5..2.0) {
        let found = concentration_from_reading(&mut Silent, b, Some(f)).unwrap().get::<percent>();
        prop_assert!((found - b * f).abs() < 1e-9);
    }

    #[test]
    fn a_penetration_has_one_number_or_none(p in 0.0..600.0) {
        let holding = Nlgi::ALL.into_iter().filter(|number| (number.penetration().0..=number.penetration().1).contains(&p)).count();
        prop_assert!(holding <= 1);
        prop_assert_eq!(Nlgi::of_penetration(p).is_some(), holding == 1);
    }

    #[test]
    fn one_form_is_always_right(
        easy in any::<bool>(), chips in any::<bool>(), grit in any::<bool>(), coolant in any::<bool>(), outdoors in any::<bool>(),
        heavy in any::<bool>(), leaks in any::<bool>(), hot in 0.0..200.0, cold in -10.0..20.0, speed in 0.0..5.0,
    ) {
        let facts = Facts {
            reach: if easy { Reach::Easy } else { Reach::Hard }, chips, grit, coolant, outdoors, heavy, leaks,
            hottest: celsius(hot), coldest: celsius(cold), speed: Velocity::new::<meter_per_second>(speed), ..Facts::default()
        };
        let found = form(&facts);
        let right = [found.oil, found.grease, found.dry].into_iter().filter(|standing| *standing == Standing::Right).count();
        prop_assert_eq!(right, 1, "{:?}", found);
        prop_assert!(!found.why.is_empty());
    }

    #[test]
    fn keeping_the_working_changes_no_answer(journal in journal(), grade in prop::sample::select(vec![22.0, 68.0, 150.0])) {
        let inlet = celsius(25.0);
        let mut notebook = Notebook::new();
        let kept = heat_balance(&mut notebook, &journal, &oil(grade), &Cooling::ByOil { inlet });
        prop_assert_eq!(&kept, &heat_balance(&mut Silent, &journal, &oil(grade), &Cooling::ByOil { inlet }));
        if kept.is_ok() {
            // The solver's step shows what is left of its equation, and every step is well-formed MathML.
            let residual = notebook.steps().find_map(|step| step.residual).unwrap();
            prop_assert!(residual.abs() < 1e-6);
            for step in notebook.steps() {
                prop_assert!(roxmltree::Document::parse(&step.math()).is_ok(), "{}", step.math());
            }
        }
    }
}
