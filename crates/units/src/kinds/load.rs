//! Force, torque, pressure, power.
//!
//! Exact: standard gravity (third General Conference on Weights and Measures, 1901), the inch and the pound (1959), the atmosphere.
//! The columns of mercury and water are the conventional ones: 13,595.1 kg/m³ and 1,000 kg/m³ under standard gravity
//! (NIST Special Publication 811, appendix B).

use super::{GRAVITY, POUND_FORCE};
use crate::quantity::quantity;

quantity! {
    Force, "a force";
    Metric "N" ["newton", "newtons"] 1.0, 1.0; Significant(3), from 0.0;
    Metric "kN" ["kilonewton", "kilonewtons"] 1e3, 1.0; Significant(3), from 1e4;
    Metric "kgf" ["kp"] GRAVITY, 1.0; Significant(3);
    Inch "lbf" ["pound force", "pounds force"] POUND_FORCE, 1.0; Significant(3), from 0.0;
    Inch "ozf" ["ounce force"] POUND_FORCE, 16.0; Significant(3);
}

quantity! {
    Torque, "a torque";
    Metric "N·m" ["newton metre", "newton metres", "newton meter", "newton meters"] 1.0, 1.0; Significant(3), from 0.0;
    Metric "N·cm" [] 1.0, 100.0; Significant(3);
    Metric "N·mm" [] 1.0, 1e3; Significant(3);
    Metric "kgf·m" ["m kgf", "kp m"] GRAVITY, 1.0; Significant(3);
    Metric "kgf·cm" ["cm kgf", "kp cm"] GRAVITY, 100.0; Significant(3);
    Inch "ft-lbf" ["lbf ft", "ft lb", "lb ft"] POUND_FORCE * 3048.0, 1e4; Significant(3), from 13.558;
    Inch "in-lbf" ["lbf in", "in lb", "lb in"] POUND_FORCE * 254.0, 1e4; Significant(3), from 0.0;
    Inch "in-ozf" ["ozf in", "in oz", "oz in"] POUND_FORCE * 254.0, 16e4; Significant(3);
}

quantity! {
    Pressure, "a pressure";
    Metric "MPa" ["N/mm²", "megapascal"] 1e6, 1.0; Significant(3), from 1e6;
    Metric "kPa" ["kilopascal"] 1e3, 1.0; Significant(3), from 1e3;
    Metric "Pa" ["pascal", "N/m²"] 1.0, 1.0; Significant(3), from 0.0;
    Metric "hPa" ["hectopascal"] 100.0, 1.0; Significant(4);
    Metric "GPa" ["gigapascal", "kN/mm²"] 1e9, 1.0; Significant(3);
    Metric "bar" ["bars"] 1e5, 1.0; Significant(3);
    Metric "mbar" ["millibar"] 100.0, 1.0; Significant(3);
    Metric "kgf/cm²" ["kp/cm²"] GRAVITY * 1e4, 1.0; Significant(3);
    Metric "atm" ["atmosphere", "atmospheres"] 101_325.0, 1.0; Significant(3);
    Metric "mmHg" ["mm Hg"] 13.595_1 * GRAVITY, 1.0; Significant(3);
    Inch "psi" ["lbf/in²", "lb/in²"] POUND_FORCE * 1e8, 64_516.0; Significant(3), from 0.0;
    Inch "ksi" ["kip/in²"] POUND_FORCE * 1e11, 64_516.0; Significant(3), from 6.894_757e7;
    Inch "inHg" ["in Hg", "\"Hg"] 345.315_54 * GRAVITY, 1.0; Significant(3);
    Inch "inH2O" ["in H2O", "in water", "\"H2O", "in wc"] 25.4 * GRAVITY, 1.0; Significant(3);
}

quantity! {
    Power, "a power";
    Metric "W" ["watt", "watts"] 1.0, 1.0; Significant(3), from 0.0;
    Metric "kW" ["kilowatt", "kilowatts"] 1e3, 1.0; Significant(3), from 1e3;
    // 550 ft·lbf/s, and 75 kgf·m/s.
    Inch "hp" ["hp mechanical", "horsepower", "bhp"] POUND_FORCE * 550.0 * 3048.0, 1e4; Significant(3), from 0.0;
    Metric "PS" ["hp metric", "metric hp", "CV"] GRAVITY * 75.0, 1.0; Significant(3);
    // The International Table BTU, 1055.05585262 J exactly.
    Inch "BTU/h" ["BTU/hr", "BTUh"] 1_055.055_852_62, 3_600.0; Significant(3);
}
