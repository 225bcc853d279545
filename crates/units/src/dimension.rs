//! The kinds of quantity as data, so that tables of fields can name them.

use crate::{Quantity, QuantityError, System, parse, show, show_in};

macro_rules! dimensions {
    ($($kind:ident $word:literal,)+) => {
        /// A kind of quantity.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum Dimension {
            $(#[doc = concat!("See [`crate::", stringify!($kind), "`].")] $kind,)+
        }

        impl Dimension {
            /// Every kind there is.
            pub const ALL: &'static [Self] = &[$(Self::$kind),+];

            /// The name without an article, as a table of fields writes it: "length", "kinematic viscosity".
            #[must_use]
            pub fn word(self) -> &'static str {
                match self { $(Self::$kind => $word),+ }
            }

            fn dealings(self) -> Dealings {
                match self { $(Self::$kind => Dealings::of::<crate::$kind>()),+ }
            }
        }
    };
}

dimensions! {
    Length "length",
    Area "area",
    Volume "volume",
    Mass "mass",
    MassDensity "density",
    Temperature "temperature",
    TemperatureDifference "temperature difference",
    Velocity "velocity",
    AngularVelocity "speed of rotation",
    Frequency "frequency",
    Time "time",
    Force "force",
    Torque "torque",
    Pressure "pressure",
    Power "power",
    KinematicViscosity "kinematic viscosity",
    DynamicViscosity "dynamic viscosity",
    Ratio "share",
    VolumeRate "volume rate",
    Usage "time of use",
}

/// An SI value of a kind known only as data as a number in the unit of that spelling; `None` when the kind has none such.
#[must_use]
pub fn value_in(dimension: Dimension, base: f64, unit: &str) -> Option<f64> {
    (dimension.dealings().value_in)(base, unit)
}

/// What can be done with a kind without its type.
struct Dealings {
    name: &'static str,
    symbols: fn() -> Vec<&'static str>,
    spellings: fn() -> Vec<&'static str>,
    parse: fn(&str) -> Result<f64, QuantityError>,
    show: fn(f64, System) -> String,
    show_in: fn(f64, &str) -> Option<String>,
    value_in: fn(f64, &str) -> Option<f64>,
}

impl Dealings {
    fn of<Q: Quantity>() -> Self {
        Self {
            name: Q::NAME,
            symbols: || Q::units().iter().map(|unit| unit.symbol).collect(),
            spellings: || Q::units().iter().flat_map(|unit| std::iter::once(unit.symbol).chain(unit.spellings.iter().copied())).collect(),
            parse: |text| parse::<Q>(text).map(Quantity::base),
            show: |base, system| show(Q::from_base(base), system),
            show_in: |base, unit| show_in(Q::from_base(base), unit),
            value_in: |base, unit| crate::spelling::find::<Q>(unit).map(|unit| (unit.from)(Q::from_base(base))),
        }
    }
}

impl Dimension {
    /// The kind of that [`word`](Self::word).
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|kind| kind.word() == word)
    }

    /// The name with its article: "a length".
    #[must_use]
    pub fn name(self) -> &'static str {
        self.dealings().name
    }

    /// The symbols of its units, the printing defaults first.
    #[must_use]
    pub fn units(self) -> Vec<&'static str> {
        (self.dealings().symbols)()
    }

    /// Every spelling accepted.
    #[must_use]
    pub fn spellings(self) -> Vec<&'static str> {
        (self.dealings().spellings)()
    }
}

/// Reads a quantity of a kind known only as data, into its SI value.
///
/// # Errors
/// Those of [`parse()`].
pub fn parse_any(dimension: Dimension, text: &str) -> Result<f64, QuantityError> {
    (dimension.dealings().parse)(text)
}

/// Prints an SI value of a kind known only as data.
#[must_use]
pub fn show_base(dimension: Dimension, base: f64, system: System) -> String {
    (dimension.dealings().show)(base, system)
}

/// Prints an SI value of a kind known only as data in the unit of that spelling; `None` when the kind has none such.
#[must_use]
pub fn show_base_in(dimension: Dimension, base: f64, unit: &str) -> Option<String> {
    (dimension.dealings().show_in)(base, unit)
}
