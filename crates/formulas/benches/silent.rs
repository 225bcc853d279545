//! What keeping the working costs those who do not keep it: each formula with the silent recorder, and the same formula written bare.
//!
//! A chapter's function is called, so the bare ones are kept from being inlined: a pair must differ in nothing but the recorder.
//!
//! Run with `cargo bench -p formulas`. The two of a pair are meant to lie within 5 % of one another; `notebook` shows what a sheet pays.

use divan::{Bencher, black_box};
use formulas::film::{Contact, elliptical_film};
use formulas::rolling_bearing::reference_viscosity;
use formulas::steam::saturation_temperature_at;
use formulas::viscosity::{Measured, viscosity_at};
use formulas::{FormulaError, Notebook, Silent};
use uom::si::angular_velocity::revolution_per_minute as rpm;
use uom::si::dynamic_viscosity::{millipascal_second, pascal_second};
use uom::si::f64::{
    AngularVelocity, DynamicViscosity, Force, KinematicViscosity, Length, Pressure, ThermodynamicTemperature as Temperature, Velocity,
};
use uom::si::force::newton;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::{meter, micrometer, millimeter};
use uom::si::pressure::{gigapascal, megapascal, pascal};
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::velocity::meter_per_second;

fn main() {
    divan::main();
}

/// The error a bare formula gives, of the chapters' type.
fn refused(value: f64) -> FormulaError {
    FormulaError::NotPositive { what: "the value", value, unit: "" }
}

/// A few hundred points for one sample, so that the clock's own step is lost among them.
const POINTS: u16 = 500;

fn points(low: f64, high: f64) -> Vec<f64> {
    (0..POINTS).map(|i| low + (high - low) * f64::from(i) / f64::from(POINTS)).collect()
}

fn over(bencher: Bencher<'_, '_>, values: &[f64], work: impl Fn(f64) -> f64 + Sync) {
    bencher.bench(|| values.iter().map(|value| work(black_box(*value))).sum::<f64>());
}

mod viscosity {
    use super::*;

    fn oil() -> [Measured; 2] {
        let nu = KinematicViscosity::new::<mm2_per_s>;
        [Measured::at_40(nu(black_box(68.0))), Measured::at_100(nu(black_box(8.5)))]
    }

    /// Z with the standard's terms for thin oils.
    fn z(nu: f64) -> f64 {
        nu + 0.7 + (-1.14883 - 2.65868 * nu).exp() - (-0.003_813_8 - 12.5645 * nu).exp() + (5.46491 - 37.6289 * nu).exp()
            - (13.0458 - 74.6851 * nu).exp()
            + (37.4619 - 192.643 * nu).exp()
            - (80.4945 - 400.468 * nu).exp()
    }

    /// The same checks and the same sums as the chapter's, thick oils only.
    #[inline(never)]
    fn bare(cool: Measured, hot: Measured, at: Temperature) -> Result<KinematicViscosity, FormulaError> {
        if !(cool.at < hot.at && cool.nu > hot.nu) {
            return Err(refused(cool.nu.get::<mm2_per_s>()));
        }
        let (t_1, nu_1) = (cool.at.get::<kelvin>(), cool.nu.get::<mm2_per_s>());
        let (t_2, nu_2) = (hot.at.get::<kelvin>(), hot.nu.get::<mm2_per_s>());
        if !((0.21..=2e7).contains(&nu_1) && (0.21..=2e7).contains(&nu_2) && t_1 > 0.0) {
            return Err(refused(nu_1));
        }
        let (w_1, w_2) = (z(nu_1).log10().log10(), z(nu_2).log10().log10());
        let b = (w_1 - w_2) / (t_2.log10() - t_1.log10());
        let a = w_1 + b * t_1.log10();
        let t = at.get::<kelvin>();
        let w = a - b * t.log10();
        let z_t = 10.0_f64.powf(10.0_f64.powf(w));
        let thinnest = z(0.21) - 0.91;
        let estimate = if z_t - 0.7 - thinnest < 0.21 { z_t - 0.7 - thinnest } else { z_t - 0.7 };
        if !(t > 0.0 && (0.21..=2e7).contains(&estimate) && z_t - 0.7 > 12.0) {
            return Err(refused(estimate));
        }
        Ok(KinematicViscosity::new::<mm2_per_s>(z_t - 0.7))
    }

    fn read(found: Result<KinematicViscosity, FormulaError>) -> f64 {
        found.map_or(0.0, |nu| nu.get::<mm2_per_s>())
    }

    #[divan::bench]
    fn silent(bencher: Bencher<'_, '_>) {
        let [cool, hot] = oil();
        over(bencher, &points(0.0, 80.0), |t| read(viscosity_at(&mut Silent, cool, hot, Temperature::new::<degree_celsius>(t))));
    }

    #[divan::bench]
    fn written_bare(bencher: Bencher<'_, '_>) {
        let [cool, hot] = oil();
        over(bencher, &points(0.0, 80.0), |t| read(bare(cool, hot, Temperature::new::<degree_celsius>(t))));
    }

    #[divan::bench]
    fn notebook(bencher: Bencher<'_, '_>) {
        let [cool, hot] = oil();
        over(bencher, &points(0.0, 80.0), |t| read(viscosity_at(&mut Notebook::new(), cool, hot, Temperature::new::<degree_celsius>(t))));
    }
}

mod rolling_bearing {
    use super::*;

    #[inline(never)]
    fn bare(speed: AngularVelocity, mean_diameter: Length) -> Result<KinematicViscosity, FormulaError> {
        let (n, d_m) = (speed.get::<rpm>(), mean_diameter.get::<millimeter>());
        for value in [n, d_m] {
            if !(value > 0.0 && value.is_finite()) {
                return Err(refused(value));
            }
        }
        let nu = if n < 1000.0 { 45_000.0 * n.powf(-0.83) * d_m.powf(-0.5) } else { 4500.0 * n.powf(-0.5) * d_m.powf(-0.5) };
        Ok(KinematicViscosity::new::<mm2_per_s>(nu))
    }

    #[divan::bench]
    fn silent(bencher: Bencher<'_, '_>) {
        let d_m = Length::new::<millimeter>(black_box(38.5));
        over(bencher, &points(50.0, 3000.0), |n| {
            reference_viscosity(&mut Silent, AngularVelocity::new::<rpm>(n), d_m).map_or(0.0, |nu| nu.get::<mm2_per_s>())
        });
    }

    #[divan::bench]
    fn written_bare(bencher: Bencher<'_, '_>) {
        let d_m = Length::new::<millimeter>(black_box(38.5));
        over(bencher, &points(50.0, 3000.0), |n| bare(AngularVelocity::new::<rpm>(n), d_m).map_or(0.0, |nu| nu.get::<mm2_per_s>()));
    }
}

mod film {
    use super::*;

    fn contact(eta: f64) -> Contact {
        Contact {
            speed: Velocity::new::<meter_per_second>(black_box(2.0)),
            viscosity: DynamicViscosity::new::<millipascal_second>(eta),
            pressure_coefficient_per_pa: black_box(18e-9),
            modulus: Pressure::new::<gigapascal>(black_box(226.0)),
            radius: Length::new::<millimeter>(black_box(6.0)),
            load: Force::new::<newton>(black_box(100.0)),
            ellipticity: black_box(6.0),
        }
    }

    #[inline(never)]
    fn bare(contact: &Contact) -> Result<[Length; 2], FormulaError> {
        let (speed, eta) = (contact.speed.get::<meter_per_second>(), contact.viscosity.get::<pascal_second>());
        let (alpha, modulus) = (contact.pressure_coefficient_per_pa, contact.modulus.get::<pascal>());
        let (radius, load, k) = (contact.radius.get::<meter>(), contact.load.get::<newton>(), contact.ellipticity);
        if ![speed, eta, modulus, radius, load].into_iter().all(|value| value > 0.0 && value.is_finite()) {
            return Err(refused(speed));
        }
        let (u, g, w) = (eta * speed / (modulus * radius), alpha * modulus, load / (modulus * radius.powf(2.0)));
        let least = 3.63 * u.powf(0.68) * g.powf(0.49) * w.powf(-0.073) * (1.0 - (-0.68 * k).exp());
        let central = 2.69 * u.powf(0.67) * g.powf(0.53) * w.powf(-0.067) * (1.0 - 0.61 * (-0.73 * k).exp());
        Ok([least, central].map(|h| Length::new::<micrometer>(1e6 * h * radius)))
    }

    #[divan::bench]
    fn silent(bencher: Bencher<'_, '_>) {
        over(bencher, &points(5.0, 200.0), |eta| {
            elliptical_film(&mut Silent, &contact(eta))
                .map_or(0.0, |film| film.minimum.get::<micrometer>() + film.central.get::<micrometer>())
        });
    }

    #[divan::bench]
    fn written_bare(bencher: Bencher<'_, '_>) {
        over(bencher, &points(5.0, 200.0), |eta| {
            bare(&contact(eta)).map_or(0.0, |film| film.into_iter().map(|h| h.get::<micrometer>()).sum())
        });
    }
}

mod steam {
    use super::*;

    #[inline(never)]
    fn bare(absolute: Pressure) -> Result<Temperature, FormulaError> {
        let p = absolute.get::<megapascal>();
        if !(6.112_13e-4..=22.064).contains(&p) {
            return Err(refused(p));
        }
        let beta = p.powf(0.25);
        let square = beta.powf(2.0);
        let e = square - 17.073_846_940_092 * beta + 14.915_108_613_530;
        let f = 1_167.052_145_276_7 * square + 12_020.824_702_47 * beta - 4_823.265_736_159_1;
        let g = -724_213.167_032_06 * square - 3_232_555.032_233_3 * beta + 405_113.405_420_57;
        let d = 2.0 * g / (-f - (f.powf(2.0) - 4.0 * e * g).sqrt());
        let sum = 650.175_348_447_98 + d;
        let t = (sum - (sum.powf(2.0) - 4.0 * (-0.238_555_575_678_49 + 650.175_348_447_98 * d)).sqrt()) / 2.0;
        Ok(Temperature::new::<kelvin>(t))
    }

    #[divan::bench]
    fn silent(bencher: Bencher<'_, '_>) {
        over(bencher, &points(0.1, 2.0), |p| {
            saturation_temperature_at(&mut Silent, Pressure::new::<megapascal>(p)).map_or(0.0, |t| t.get::<kelvin>())
        });
    }

    #[divan::bench]
    fn written_bare(bencher: Bencher<'_, '_>) {
        over(bencher, &points(0.1, 2.0), |p| bare(Pressure::new::<megapascal>(p)).map_or(0.0, |t| t.get::<kelvin>()));
    }
}
