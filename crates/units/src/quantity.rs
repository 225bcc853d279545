//! What a quantity is to this crate: a name, a number in SI and the units people write it in.

use std::fmt::Debug;

use crate::{Dimension, QuantityError};

/// A kind of quantity a person can write.
pub trait Quantity: Copy + PartialOrd + Debug + 'static {
    /// The name with its article: "a length", "a kinematic viscosity".
    const NAME: &'static str;
    /// The same kind as data.
    const DIMENSION: Dimension;
    /// The least and the greatest SI value that makes sense; anything beyond is refused when it is read.
    const LIMITS: (f64, f64) = (f64::NEG_INFINITY, f64::INFINITY);

    /// Every unit and spelling accepted. The first metric one and the first inch one are the printing defaults.
    fn units() -> &'static [Unit<Self>];

    /// The value in the coherent SI unit.
    fn base(self) -> f64;

    /// From a value in the coherent SI unit.
    fn from_base(value: f64) -> Self;

    /// Reads the ways of writing this kind that are not a number and a unit ("daily", "ISO VG 68"); `None` when it is not one.
    fn by_name(_text: &str) -> Option<Result<Self, QuantityError>> {
        None
    }
}

/// One unit of a quantity.
#[derive(Debug)]
pub struct Unit<Q: 'static> {
    /// How it is printed.
    pub symbol: &'static str,
    /// How else it may be written. Blanks, hyphens, dots, brackets and raised digits need no spelling of their own.
    ///
    /// When the symbol with an "s" is among them, it is printed for any number but 1.
    pub spellings: &'static [&'static str],
    /// Whose shop it belongs to.
    pub system: System,
    /// From a number in this unit.
    pub to: fn(f64) -> Q,
    /// To a number in this unit.
    pub from: fn(Q) -> f64,
    /// The smallest SI magnitude for which printing picks this unit; `None` when it is only printed on request.
    pub printed_from: Option<f64>,
    /// How many digits are honest in this unit.
    pub digits: Digits,
}

/// How many digits of a number are printed; trailing zeros never are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Digits {
    /// This many significant digits.
    Significant(usize),
    /// This many digits after the point.
    Decimals(usize),
}

/// Whose units to print.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum System {
    /// Millimetres, litres, degrees Celsius.
    #[default]
    Metric,
    /// Inches, US gallons, degrees Fahrenheit.
    Inch,
    /// Metric with inch in brackets; a unit of `Both` is at home in either.
    Both,
}

/// Implements [`Quantity`] for a `uom` alias or for [`crate::Usage`] from its table of units.
///
/// A row reads: system, symbol, spellings, factor to SI as numerator `/` denominator, digits, and the SI magnitude it is printed from.
/// The factor is kept as two numbers so that 68 mm²/s becomes the float nearest to 68e-6 and not one beside it.
macro_rules! quantity {
    (
        $kind:ident, $name:literal $(, within $low:expr, $high:expr)? $(, named $by_name:path)?;
        $($system:ident $symbol:literal [$($spelling:literal),*] $num:expr, $den:expr; $digits:ident($count:expr) $(, from $least:expr)? ;)+
    ) => {
        impl $crate::Quantity for $crate::$kind {
            const NAME: &'static str = $name;
            const DIMENSION: $crate::Dimension = $crate::Dimension::$kind;
            $(const LIMITS: (f64, f64) = ($low, $high);)?

            fn units() -> &'static [$crate::Unit<Self>] {
                const UNITS: &[$crate::Unit<$crate::$kind>] = &[$($crate::Unit {
                    symbol: $symbol,
                    spellings: &[$($spelling),*],
                    system: $crate::System::$system,
                    to: |number| $crate::Quantity::from_base(number * $num / $den),
                    from: |quantity| $crate::Quantity::base(quantity) * $den / $num,
                    printed_from: crate::quantity::least!($($least)?),
                    digits: $crate::Digits::$digits($count),
                }),+];
                UNITS
            }

            fn base(self) -> f64 {
                self.value
            }

            fn from_base(value: f64) -> Self {
                Self { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value }
            }

            $(fn by_name(text: &str) -> Option<Result<Self, $crate::QuantityError>> {
                $by_name(text)
            })?
        }
    };
}
pub(crate) use quantity;

macro_rules! least {
    () => {
        None
    };
    ($least:expr) => {
        Some($least)
    };
}
pub(crate) use least;
