//! What the chemistry chapters show: every step's MathML is well formed, and every source they name is listed.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

use formulas::coating::{
    Application, Face, Immersed, Tank, best_stance, blackening, coat_volume, concentrate_to_buy, drained_mean, grit_sequence, immersion,
    size_change, tolerance_use,
};
use formulas::pickle::{Oxide, copper_limit, fluoride_bound, hydrogen_from_aluminium, neutralise, oxide_copper, pickle_bath};
use formulas::quench::{
    Charge, HotMetal, Liquid, Lump, bath_after, flash_margin, heat_up_time, iron_heat_kj_per_kg, oil_volume, quench_vessel, steam_of_water,
    temperature_after, time_to,
};
use formulas::solid_area::{Solid, Texture, surface_area, textured_area, volume};
use formulas::solution::{Acid, caustic_solution, ideal_ph, mass_share, parts_share, rinse_residue, sulfuric_dilution};
use formulas::stock::{Demand, Offer, SERVICE_OTHER, Use, cheapest_pack, containment, fill_limit, pack_use, reorder_point, use_rate};
use formulas::working::{Given, Step};
use formulas::{Notebook, sources};
use units::{Area, KinematicViscosity, Length, Mass, MassDensity, Power, Range, Ratio, Temperature, TemperatureDifference, Time, Volume};
use uom::si::area::square_meter;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::{micrometer, millimeter};
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::power::watt;
use uom::si::ratio::{percent, ratio};
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{day, second};
use uom::si::volume::{liter, milliliter};

fn celsius(value: f64) -> Temperature {
    Temperature::new::<degree_celsius>(value)
}
fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}
fn um(value: f64) -> Length {
    Length::new::<micrometer>(value)
}
fn litres(value: f64) -> Volume {
    Volume::new::<liter>(value)
}
fn share(value: f64) -> Ratio {
    Ratio::new::<percent>(value)
}
fn kilograms(value: f64) -> Mass {
    Mass::new::<kilogram>(value)
}
fn density(value: f64) -> MassDensity {
    MassDensity::new::<kilogram_per_cubic_meter>(value)
}
fn square_metres(value: f64) -> Area {
    Area::new::<square_meter>(value)
}

const BALL_MM: f64 = 5.0;

fn solids(r: &mut Notebook) {
    let length = mm(30.0);
    for solid in [
        Solid::Cylinder { diameter: mm(20.0), length },
        Solid::Block { length, width: mm(20.0), height: mm(10.0) },
        Solid::Sphere { diameter: mm(BALL_MM) },
        Solid::Tube { outside: mm(20.0), bore: mm(10.0), length },
    ] {
        surface_area(r, &solid).unwrap();
        volume(r, &solid).unwrap();
        best_stance(r, &solid, mm(10.0)).unwrap();
    }
    let plate = Solid::Plate { mass: kilograms(1.0), density: density(7850.0), thickness: mm(2.0), edge: mm(800.0) };
    surface_area(r, &plate).unwrap();
    textured_area(r, square_metres(0.1), Texture::Threaded);
}

fn coats(r: &mut Notebook) {
    let change = size_change(r, Face::InternalThread, um(5.0)).unwrap();
    tolerance_use(r, change.grown, um(60.0)).unwrap();
    drained_mean(r, KinematicViscosity::new::<mm2_per_s>(22.0), mm(300.0), Time::new::<day>(1.0)).unwrap();
    coat_volume(r, square_metres(0.1), um(25.0), Range::exact(share(30.0)), Application::Brush).unwrap();
    let black = blackening(r, square_metres(0.1), um(1.0), density(2.5)).unwrap();
    let part = Immersed { height: mm(60.0), mass: kilograms(1.5), density: density(7850.0) };
    let bath = immersion(r, &Tank::Round { diameter: mm(250.0) }, mm(200.0), &part, black.bath).unwrap();
    concentrate_to_buy(r, bath.liquid, share(10.0)).unwrap();
    grit_sequence(r, 120, 2000).unwrap();
}

fn solutions(r: &mut Notebook) {
    let room = celsius(20.0);
    parts_share(r, 1.0, 10.0).unwrap();
    mass_share(r, share(10.0), density(1840.0), density(998.0)).unwrap();
    sulfuric_dilution(r, litres(1.0), share(37.0), share(10.0), room).unwrap();
    caustic_solution(r, kilograms(1.0), share(5.0), room).unwrap();
    rinse_residue(r, Volume::new::<milliliter>(30.0), litres(0.5), 2).unwrap();
    for acid in Acid::ALL {
        ideal_ph(r, acid, share(10.0)).unwrap();
        pickle_bath(r, acid, litres(1.0), share(96.0), share(8.0), room).unwrap();
        copper_limit(r, acid, share(10.0)).unwrap();
        neutralise(r, acid, kilograms(0.1), litres(1.0), room).unwrap();
    }
    oxide_copper(r, Oxide::Black, square_metres(0.01), um(5.0)).unwrap();
    fluoride_bound(r, kilograms(0.005), share(30.0), litres(30_000.0), room).unwrap();
    hydrogen_from_aluminium(r, kilograms(0.01), room).unwrap();
}

fn quenches(r: &mut Notebook) {
    let (room, rise) = (celsius(20.0), TemperatureDifference::new::<kelvin>(30.0));
    let (charge, oil) = (Charge { mass: kilograms(0.5), metal: HotMetal::Iron, at: celsius(820.0) }, Liquid::oil());
    iron_heat_kj_per_kg(r, charge.at).unwrap();
    let needed = oil_volume(r, &charge, &oil, room, rise).unwrap().needed;
    let end = bath_after(r, &charge, &oil, needed, room).unwrap();
    flash_margin(r, end, celsius(180.0)).unwrap();
    quench_vessel(r, needed, mm(100.0), square_metres(0.03)).unwrap();
    steam_of_water(r, Volume::new::<milliliter>(1.0)).unwrap();
    for loss in [0.0, 2.0] {
        heat_up_time(r, &oil, needed, (room, celsius(50.0)), Power::new::<watt>(500.0), loss).unwrap();
    }
    let solid = Solid::Sphere { diameter: mm(BALL_MM) };
    let ball = Lump {
        volume: volume(r, &solid).unwrap(),
        surface: surface_area(r, &solid).unwrap(),
        density: density(7850.0),
        specific_heat_j_per_kg_k: 490.0,
        conductivity_w_per_m_k: 45.0,
        film_w_per_m2_k: 600.0,
        start: charge.at,
        around: room,
    };
    temperature_after(r, &ball, Time::new::<second>(5.0)).unwrap();
    time_to(r, &ball, celsius(200.0)).unwrap();
}

fn stock(r: &mut Notebook) {
    let (demand, year) = (Demand { times_a_year: 6.0, each: litres(0.04) }, Time::new::<day>(365.0));
    reorder_point(r, &demand, Time::new::<day>(30.0), Ratio::new::<ratio>(SERVICE_OTHER)).unwrap();
    let use_of_it = pack_use(r, &demand, litres(0.5), year).unwrap();
    cheapest_pack(r, &[Offer { size: litres(0.5), price: 12.0, use_of_it }], 1.0).unwrap();
    let once = Use { taken: litres(0.04), since: Time::new::<day>(60.0) };
    use_rate(r, once, &[once], 0.1).unwrap();
    containment(r, litres(5.0), litres(24.0)).unwrap();
    fill_limit(r, litres(1.0), 1.43e-3, TemperatureDifference::new::<kelvin>(35.0)).unwrap();
}

#[test]
fn every_step_is_well_formed_and_sourced() {
    let mut notebook = Notebook::new();
    for work in [solids, coats, solutions, quenches, stock] {
        let before = notebook.steps().count();
        work(&mut notebook);
        assert!(notebook.steps().count() > before + 5, "a chapter kept nothing");
    }
    for math in notebook.steps().map(Step::math).chain(notebook.given_values().map(Given::math)) {
        let document = roxmltree::Document::parse(&math).unwrap();
        for node in document.descendants().filter(|node| matches!(node.tag_name().name(), "mfrac" | "msup" | "msub")) {
            assert_eq!(node.children().filter(roxmltree::Node::is_element).count(), 2, "{math}");
        }
    }
    for step in notebook.steps() {
        assert!(sources::ALL.contains(&step.source), "{} is not listed", step.source);
        assert!(step.value.is_finite(), "{}", step.line());
    }
    // A residual stands beside what a solver found, and is small beside it.
    let mut solved = notebook.steps().filter_map(|step| step.residual.map(|residual| (step, residual))).peekable();
    assert!(solved.peek().is_some());
    for (step, residual) in solved {
        assert!(residual.abs() < 1e-6 * step.value.abs().max(1.0), "{}", step.line());
    }
}
