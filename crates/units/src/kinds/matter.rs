//! Mass, density, viscosity, share. 1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959).

use super::{IMPERIAL_GALLON, POUND, POUND_FORCE, US_GALLON};
use crate::quantity::quantity;
use crate::{KinematicViscosity, Quantity, QuantityError, number};

quantity! {
    Mass, "a mass", within 0.0, f64::INFINITY;
    Metric "g" ["gram", "grams", "gramme", "grammes"] 1.0, 1e3; Significant(3), from 1e-4;
    Metric "mg" ["milligram", "milligrams"] 1.0, 1e6; Significant(3), from 0.0;
    Metric "kg" ["kilo", "kilos", "kilogram", "kilograms"] 1.0, 1.0; Significant(3), from 1.0;
    Metric "t" ["tonne", "tonnes"] 1e3, 1.0; Significant(3);
    Inch "oz" ["ounce", "ounces"] POUND, 16.0; Significant(3), from 0.0;
    Inch "lb" ["lbs", "pound", "pounds", "lbm"] POUND, 1.0; Significant(3), from 0.453;
}

quantity! {
    MassDensity, "a density", within 0.0, f64::INFINITY;
    Metric "mg/m³" [] 1.0, 1e6; Significant(4), from 0.0;
    Metric "kg/m³" [] 1.0, 1.0; Significant(4), from 0.05;
    Metric "g/mL" ["g/cm³", "g/cc", "kg/L", "kg/dm³"] 1e3, 1.0; Significant(4);
    Metric "g/L" [] 1.0, 1.0; Significant(4);
    Inch "lb/gal(US)" ["lb/US gal"] POUND, US_GALLON; Significant(3), from 0.0;
    Inch "lb/gal(imp)" ["lb/imp gal", "lb/UK gal"] POUND, IMPERIAL_GALLON; Significant(3);
    Inch "lb/ft³" ["lb/cu ft"] POUND, 0.028_316_846_592; Significant(3);
    Inch "lb/in³" ["lb/cu in"] POUND, 1.638_706_4e-5; Significant(3);
}

quantity! {
    KinematicViscosity, "a kinematic viscosity", within 0.0, f64::INFINITY, named viscosity_grade;
    Both "mm²/s" ["cSt", "centistoke", "centistokes"] 1.0, 1e6; Significant(3), from 0.0;
    Metric "St" ["stokes", "cm²/s"] 1.0, 1e4; Significant(3);
    Metric "m²/s" [] 1.0, 1.0; Significant(3);
}

quantity! {
    DynamicViscosity, "a dynamic viscosity", within 0.0, f64::INFINITY;
    Both "mPa·s" ["cP", "centipoise"] 1.0, 1e3; Significant(3), from 0.0;
    Both "Pa·s" [] 1.0, 1.0; Significant(3), from 1.0;
    Metric "P" ["poise"] 1.0, 10.0; Significant(3);
    // One reyn is 1 lbf·s/in².
    Inch "µreyn" ["microreyn", "microreyns"] POUND_FORCE, 645.16; Significant(3);
}

quantity! {
    Ratio, "a share";
    Both "%" ["percent", "per cent", "pct"] 1.0, 100.0; Significant(3), from 1e-3;
    Both "ppm" [] 1.0, 1e6; Significant(3), from 0.0;
    // A share is the one quantity that may be written as a bare number.
    Both "" [] 1.0, 1.0; Significant(3);
}

/// "ISO VG 68" stands for 68 mm²/s at 40 °C, the midpoint of its grade (ISO 3448).
fn viscosity_grade(text: &str) -> Option<Result<KinematicViscosity, QuantityError>> {
    let upper = text.to_ascii_uppercase();
    let grade = upper.strip_prefix("ISO").unwrap_or(&upper).trim_start_matches([' ', '-']).strip_prefix("VG")?;
    let (value, rest) = number::leading(grade.trim_start_matches([' ', '-'])).ok()?;
    let middle = GRADES.iter().find(|(name, middle)| (name - value).abs() < 1e-9 || (middle - value).abs() < 1e-9)?.1;
    rest.is_empty().then(|| Ok(KinematicViscosity::from_base(middle / 1e6)))
}

/// The grades of ISO 3448 by name, with the middle of each at 40 °C, mm²/s; *from memory* of the standard.
const GRADES: [(f64, f64); 20] = [
    (2.0, 2.2),
    (3.0, 3.2),
    (5.0, 4.6),
    (7.0, 6.8),
    (10.0, 10.0),
    (15.0, 15.0),
    (22.0, 22.0),
    (32.0, 32.0),
    (46.0, 46.0),
    (68.0, 68.0),
    (100.0, 100.0),
    (150.0, 150.0),
    (220.0, 220.0),
    (320.0, 320.0),
    (460.0, 460.0),
    (680.0, 680.0),
    (1000.0, 1000.0),
    (1500.0, 1500.0),
    (2200.0, 2200.0),
    (3200.0, 3200.0),
];
