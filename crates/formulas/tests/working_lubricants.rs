//! What the lubricant chapters show: every step's MathML is well formed, and every source they name is listed.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

use formulas::cutting::{Coolant, coolant_rise};
use formulas::feed::{HotAndCold, Wick, ball_oiler_strokes, coldest_start, drops_of, grade_for, warm_up_time, wick_feed};
use formulas::film::{
    RollingPart, ball_contact, elliptical_film, film_parameter, line_film, most_loaded_part, roller_contact, tooth_contact,
};
use formulas::gear::{Mesh, gear_opinions, open_gear_dose, worm_grade};
use formulas::grades::{Family, read_label, viscosity_40_of_label};
use formulas::grease::{Bearing, base_oil_viscosity, fill};
use formulas::plain_bearing::{Cooling, Journal, Oil, drops_per_minute, film_bracket, film_flow, heat_balance};
use formulas::rolling_bearing::{Cleanliness, Fatigue, Form, Rolling, judge_by_life, outer_ring_speed, viscosity_opinions};
use formulas::saybolt::{Furol, saybolt_furol, saybolt_universal, viscosity_from_furol, viscosity_from_universal};
use formulas::slideway::{SlideOil, Way, WearSurface, stick_slip, way_viscosity};
use formulas::steam_cylinder::{Steam, cylinder_oil, hourly_feed};
use formulas::sump::{concentrate_for, concentration_from_reading, hardness_after, steady_top_up};
use formulas::viscosity::Measured;
use formulas::working::{Given, Step};
use formulas::{Notebook, sources};
use units::{
    AngularVelocity, Area, DynamicViscosity, Force, KinematicViscosity, Length, Mass, MassDensity, Power, Pressure, Ratio, Temperature,
    TemperatureDifference, Time, Velocity, Volume, VolumeRate,
};
use uom::si::angular_velocity::revolution_per_minute as rpm;
use uom::si::area::{square_meter, square_millimeter};
use uom::si::dynamic_viscosity::millipascal_second;
use uom::si::force::newton;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::{micrometer, millimeter};
use uom::si::mass::gram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::power::watt;
use uom::si::pressure::{bar, megapascal};
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin as kelvin_step;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{minute, second};
use uom::si::velocity::meter_per_second;
use uom::si::volume::{liter, milliliter};
use uom::si::volume_rate::liter_per_minute;

fn nu(value: f64) -> KinematicViscosity {
    KinematicViscosity::new::<mm2_per_s>(value)
}

fn celsius(value: f64) -> Temperature {
    Temperature::new::<degree_celsius>(value)
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn speed(value: f64) -> AngularVelocity {
    AngularVelocity::new::<rpm>(value)
}

fn contacts(r: &mut Notebook) {
    let eta = DynamicViscosity::new::<millipascal_second>(40.0);
    let mesh = Mesh {
        force: Force::new::<newton>(300.0),
        face: mm(10.0),
        pinion: mm(40.0),
        ratio: 1.5,
        speed: Velocity::new::<meter_per_second>(2.0),
        application: 1.25,
    };
    gear_opinions(r, &mesh, celsius(20.0)).unwrap();
    worm_grade(r, mesh.speed, celsius(20.0)).unwrap();
    open_gear_dose(r, 100.0, mm(10.0), mm(1.0)).unwrap();
    let tooth = tooth_contact(r, &mesh, 20.0, eta).unwrap();
    let film = line_film(r, &tooth).unwrap();
    film_parameter(r, film, Length::new::<micrometer>(0.4), Length::new::<micrometer>(0.4)).unwrap();
    let load = most_loaded_part(r, mesh.force, 9.0).unwrap();
    let part = RollingPart { diameter: mm(7.9), mean_diameter: mm(38.5), speed: speed(1450.0), load };
    roller_contact(r, &part, mm(8.0), eta).unwrap();
    let ball = ball_contact(r, &part, eta).unwrap();
    elliptical_film(r, &ball).unwrap();
}

fn bearings(r: &mut Notebook) {
    let fatigue = |rolling| Fatigue { rolling, contamination: 0.5, limit: Force::new::<newton>(300.0), load: Force::new::<newton>(900.0) };
    for kappa in [0.2, 0.7, 2.0] {
        judge_by_life(r, kappa, Cleanliness::Typical, mm(38.5), &fatigue(Rolling::Balls)).unwrap();
        judge_by_life(r, kappa, Cleanliness::Normal, mm(38.5), &fatigue(Rolling::Rollers)).unwrap();
    }
    viscosity_opinions(r, speed(3000.0), mm(38.5), Form::Spherical).unwrap();
    outer_ring_speed(r, speed(500.0), mm(25.0), mm(52.0)).unwrap();
    base_oil_viscosity(r, speed(500.0), mm(38.5)).unwrap();
    fill(r, &Bearing { bore: mm(25.0), outside: mm(52.0), width: mm(15.0), mass: Mass::new::<gram>(130.0) }, 0.9, true).unwrap();
    let journal = Journal {
        diameter: mm(25.0),
        length: mm(30.0),
        load: Force::new::<newton>(500.0),
        speed: speed(600.0),
        clearance: mm(0.04),
        journal_roughness: Length::new::<micrometer>(0.4),
        bearing_roughness: Length::new::<micrometer>(0.8),
    };
    let eta = DynamicViscosity::new::<millipascal_second>(30.0);
    film_bracket(r, &journal, eta).unwrap();
    let flow = film_flow(r, &journal, eta).unwrap();
    drops_per_minute(r, flow.sideways);
    let oil = Oil {
        cool: Measured::at_40(nu(32.0)),
        hot: Measured::at_100(nu(5.3)),
        density_15: MassDensity::new::<kilogram_per_cubic_meter>(870.0),
    };
    heat_balance(r, &journal, &oil, &Cooling::ByOil { inlet: celsius(20.0) }).unwrap();
    let area = Area::new::<square_meter>(0.03);
    heat_balance(r, &journal, &oil, &Cooling::ByHousing { area, coefficient: 15.0, oil_to_housing: 1.0, room: celsius(20.0) }).unwrap();
}

fn oils(r: &mut Notebook) {
    let at = celsius(40.0);
    let seconds = saybolt_universal(r, nu(68.0), at).unwrap();
    viscosity_from_universal(r, seconds, at).unwrap();
    for furol in [Furol::At122F, Furol::At210F] {
        saybolt_furol(r, nu(300.0), furol).unwrap();
        viscosity_from_furol(r, Time::new::<second>(100.0), furol).unwrap();
    }
    viscosity_40_of_label(r, read_label(Family::Gear, "80W-90", 2020).unwrap(), 110.0).unwrap();
    let (cool, hot) = (Measured::at_40(nu(68.0)), Measured::at_100(nu(8.5)));
    coldest_start(r, cool, hot, nu(1000.0), Some(celsius(-20.0))).unwrap();
    let place = HotAndCold { needed: nu(30.0), running: celsius(50.0), ceiling: nu(500.0), coldest: celsius(5.0) };
    grade_for(r, &place, 95.0).unwrap();
    let kelvins = TemperatureDifference::new::<kelvin_step>;
    warm_up_time(r, kelvins(25.0), kelvins(10.0), Time::new::<minute>(40.0)).unwrap();
    let wick = Wick { section: Area::new::<square_millimeter>(10.0), length: mm(80.0), viscosity: nu(100.0) };
    wick_feed(r, &wick, 5.0, &wick).unwrap();
    let dose = Volume::new::<milliliter>(0.3);
    ball_oiler_strokes(r, dose, dose).unwrap();
    drops_of(r, dose);
    let slow = Velocity::new::<meter_per_second>(0.001);
    stick_slip(r, slow, WearSurface::Bronze, SlideOil::Slideway);
    way_viscosity(r, &Way { pressure: Pressure::new::<megapascal>(0.05), speed: Some(slow), upright: Some(mm(300.0)) }).unwrap();
}

fn steam_and_water(r: &mut Notebook) {
    let gauge = Pressure::new::<bar>(3.0);
    cylinder_oil(r, gauge, Steam::Superheated(celsius(250.0))).unwrap();
    hourly_feed(r, mm(25.0), mm(25.0), speed(300.0), true);
    let (share, litres) = (Ratio::new::<percent>(6.0), Volume::new::<liter>(20.0));
    concentration_from_reading(r, 4.0, None).unwrap();
    concentrate_for(r, litres, share).unwrap();
    let flow = VolumeRate::new::<liter_per_minute>(1.0);
    steady_top_up(r, share, flow, flow).unwrap();
    hardness_after(r, MassDensity::new::<kilogram_per_cubic_meter>(0.15), litres, litres).unwrap();
    coolant_rise(r, Power::new::<watt>(500.0), flow, Coolant::Oil).unwrap();
}

#[test]
fn every_step_is_well_formed_and_sourced() {
    let mut notebook = Notebook::new();
    for work in [contacts, bearings, oils, steam_and_water] {
        work(&mut notebook);
    }
    assert!(notebook.steps().count() > 100, "a chapter kept nothing");
    for math in notebook.steps().map(Step::math).chain(notebook.given_values().map(Given::math)) {
        let document = roxmltree::Document::parse(&math).unwrap_or_else(|error| panic!("{error} in {math}"));
        for node in document.descendants().filter(|node| matches!(node.tag_name().name(), "mfrac" | "msup" | "msub")) {
            assert_eq!(node.children().filter(roxmltree::Node::is_element).count(), 2, "{math}");
        }
    }
    for step in notebook.steps() {
        assert!(sources::ALL.contains(&step.source), "{} is not listed", step.source);
        assert!(step.value.is_finite(), "{}", step.line());
    }
    // A residual stands beside what a solver found, and is small beside it.
    for step in notebook.steps().filter(|step| step.residual.is_some()) {
        assert!(step.residual.unwrap().abs() < 1e-6 * step.value.abs().max(1.0), "{}", step.line());
    }
}
