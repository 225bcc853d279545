//! What a press fit asks of a metal.

use std::marker::PhantomData;

use units::{Pressure, Temperature, celsius};

/// How a metal gives way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Strength {
    /// It yields, at this proof or yield stress.
    Yields(Pressure),
    /// It breaks without yielding, as grey iron does, at this tensile strength.
    Breaks(Pressure),
}

/// The properties a press fit is worked from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Metal {
    /// Modulus of elasticity.
    pub modulus: Pressure,
    /// Poisson's ratio.
    pub poisson: f64,
    /// Thermal expansion, per kelvin.
    pub expansion_per_k: f64,
    /// Its strength.
    pub strength: Strength,
    /// The hottest it may be made for assembly.
    pub hottest: Temperature,
}

const fn mpa(value: f64) -> Pressure {
    Pressure { dimension: PhantomData, units: PhantomData, value: value * 1e6 }
}

const fn yields(gpa: f64, poisson: f64, micro_per_k: f64, strength: f64, hottest: f64) -> Metal {
    Metal {
        modulus: mpa(gpa * 1e3),
        poisson,
        expansion_per_k: micro_per_k * 1e-6,
        strength: Strength::Yields(mpa(strength)),
        hottest: celsius(hottest),
    }
}

/// Usual metals of a shop, by the name a sheet shows.
///
/// Steel's temperatures are those of DIN 7190, *from memory*; moduli and strengths are typical, *from memory*; the other temperatures are
/// *common practice*. Case-hardened steel whose tempering is not known bears 150 °C only. The hardened steels' strengths are set low, as a
/// press fit seldom counts on them. A rolling bearing that is sealed bears 80 °C.
pub const METALS: &[(&str, Metal)] = &[
    ("mild steel", yields(210.0, 0.30, 11.0, 235.0, 350.0)),
    ("quenched and tempered steel", yields(210.0, 0.30, 11.0, 650.0, 300.0)),
    ("induction-hardened steel", yields(210.0, 0.30, 11.0, 650.0, 250.0)),
    ("case-hardened steel", yields(210.0, 0.30, 11.0, 650.0, 200.0)),
    (
        "grey iron",
        Metal {
            modulus: mpa(105e3),
            poisson: 0.25,
            expansion_per_k: 10e-6,
            strength: Strength::Breaks(mpa(200.0)),
            hottest: celsius(300.0),
        },
    ),
    ("austenitic stainless steel", yields(195.0, 0.30, 16.0, 200.0, 300.0)),
    ("leaded brass", yields(100.0, 0.35, 18.0, 200.0, 200.0)),
    ("phosphor bronze", yields(110.0, 0.34, 17.0, 150.0, 250.0)),
    ("aluminium 6082-T6", yields(70.0, 0.33, 23.0, 250.0, 120.0)),
    ("rolling bearing", yields(210.0, 0.30, 12.0, 650.0, 110.0)),
];

/// A usual metal by its name.
#[must_use]
pub fn metal(name: &str) -> Option<Metal> {
    METALS.iter().find(|(known, _)| *known == name).map(|(_, metal)| *metal)
}
