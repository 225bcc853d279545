//! Grease: how stiff, on what oil, and how much.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{AngularVelocity, KinematicViscosity, Length, Mass, Range, Temperature, Volume};
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::mass::gram;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume::cubic_centimeter;

use crate::error::{FormulaError, positive, within};
use crate::rolling_bearing::{first_fill, free_space, reference_viscosity};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// How stiff a grease is, by the NLGI's numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Nlgi {
    /// 000, runs like oil.
    N000,
    /// 00, like apple sauce: leaky gearboxes.
    N00,
    /// 0, like mustard.
    N0,
    /// 1, like tomato paste: pumped systems, cold places.
    N1,
    /// 2, like peanut butter: what most bearings take.
    N2,
    /// 3, like shortening: large upright bearings.
    N3,
    /// 4, stiff.
    N4,
    /// 5, like cheese.
    N5,
    /// 6, a block.
    N6,
}

impl Nlgi {
    /// All numbers, softest first.
    pub const ALL: [Self; 9] = [Self::N000, Self::N00, Self::N0, Self::N1, Self::N2, Self::N3, Self::N4, Self::N5, Self::N6];

    /// The number as it is printed.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::N000 => "000",
            Self::N00 => "00",
            Self::N0 => "0",
            Self::N1 => "1",
            Self::N2 => "2",
            Self::N3 => "3",
            Self::N4 => "4",
            Self::N5 => "5",
            Self::N6 => "6",
        }
    }

    /// Worked penetration the number stands for, in tenths of a millimetre at 25 °C after 60 strokes.
    ///
    /// # Source
    /// ASTM D217. Bands of 30 with gaps of 15 between them.
    ///
    /// # Example
    /// ```
    /// assert_eq!(formulas::grease::Nlgi::N2.penetration(), (265.0, 295.0));
    /// ```
    #[must_use]
    pub fn penetration(self) -> (f64, f64) {
        match self {
            Self::N000 => (445.0, 475.0),
            Self::N00 => (400.0, 430.0),
            Self::N0 => (355.0, 385.0),
            Self::N1 => (310.0, 340.0),
            Self::N2 => (265.0, 295.0),
            Self::N3 => (220.0, 250.0),
            Self::N4 => (175.0, 205.0),
            Self::N5 => (130.0, 160.0),
            Self::N6 => (85.0, 115.0),
        }
    }

    /// The number a worked penetration belongs to; none in the gap between two.
    ///
    /// # Source
    /// ASTM D217.
    #[must_use]
    pub fn of_penetration(tenths_of_mm: f64) -> Option<Self> {
        Self::ALL.into_iter().find(|number| {
            let (low, high) = number.penetration();
            (low..=high).contains(&tenths_of_mm)
        })
    }
}

/// What decides how stiff a grease a place takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// The coldest start.
    pub coldest: Temperature,
    /// Steady temperature in running.
    pub running: Temperature,
    /// Whether it comes by a central pump and lines.
    pub pumped: bool,
    /// Whether it is a gearbox without good seals.
    pub leaky_box: bool,
    /// Whether it is a large bearing on an upright shaft.
    pub large_upright: bool,
}

/// The grease's number for a place, and why.
///
/// # Source
/// *Common practice, no source*: 2; 1 below 5 °C or by pump; 00 in leaky boxes; 3 in large upright bearings and above 100 °C.
#[must_use]
pub fn consistency(place: &Place) -> (Nlgi, &'static str) {
    let celsius = Temperature::new::<degree_celsius>;
    let cold = place.coldest < celsius(5.0);
    if place.leaky_box {
        (Nlgi::N00, "a leaky box holds what oil would run out of, and its gears must still find it")
    } else if place.pumped {
        (Nlgi::N1, "a pump has to push it through its lines")
    } else if place.large_upright {
        if cold {
            (Nlgi::N2, "it would sink out of an upright bearing, but must turn cold too")
        } else {
            (Nlgi::N3, "softer grease sinks out of a large upright bearing")
        }
    } else if cold {
        (Nlgi::N1, "stiffer grease holds the machine back on a cold morning")
    } else if place.running > celsius(100.0) {
        (Nlgi::N3, "softer grease runs out when it is hot")
    } else {
        (Nlgi::N2, "what most bearings take")
    }
}

/// Viscosity of the base oil at running temperature that a rolling bearing asks of its grease: one to four times the reference viscosity.
///
/// # Errors
/// As [`reference_viscosity`].
///
/// # Source
/// ISO 281:2007; κ of 2 as the target is *common practice*.
pub fn base_oil_viscosity<R: Recorder>(
    r: &mut R,
    speed: AngularVelocity,
    mean_diameter: Length,
) -> Result<Range<KinematicViscosity>, FormulaError> {
    let reference = reference_viscosity(r, speed, mean_diameter)?;
    given!(r, nu_1[mm2_per_s] = reference, "reference viscosity");
    given!(r, kappa [] = 2.0, "viscosity ratio aimed at");
    step!(r, nu[mm2_per_s] = kappa * nu_1, sources::COMMON_PRACTICE);
    r.caution(Caution::Disputed {
        what: "the viscosity ratio to aim at",
        why: "1, 2 and 4 all have their followers; slow bearings often cannot reach 1",
    });
    Ok(Range { low: reference, likely: KinematicViscosity::new::<mm2_per_s>(nu), high: reference * 4.0 })
}

/// A bearing, as its fill sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bearing {
    /// Bore.
    pub bore: Length,
    /// Outside diameter.
    pub outside: Length,
    /// Width.
    pub width: Length,
    /// Mass without grease.
    pub mass: Mass,
}

/// A first fill of grease.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fill {
    /// Free space in the bearing.
    pub free: Volume,
    /// Grease to put in.
    pub volume: Volume,
    /// The same by the scales.
    pub mass: Mass,
}

/// First fill of a clean, empty bearing.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension or a density of nothing; [`FormulaError::OutOfRange`] for a bore not smaller than the
/// outside.
///
/// # Source
/// *The Tribology Handbook*, A20; greases have 0.85 to 0.95 g/cm³ (*typical, from memory*).
///
/// # Example
/// 25 × 52 × 15 mm and 130 g leave 7.8 cm³ free; four tenths of it are 3.1 cm³ (computed independently).
/// ```
/// use formulas::{Silent, grease::{Bearing, fill}};
/// use uom::si::{f64::{Length, Mass}, length::millimeter, mass::gram, volume::cubic_centimeter};
/// let mm = Length::new::<millimeter>;
/// let bearing = Bearing { bore: mm(25.0), outside: mm(52.0), width: mm(15.0), mass: Mass::new::<gram>(130.0) };
/// let fill = fill(&mut Silent, &bearing, 0.9, false)?;
/// assert!((fill.volume.get::<cubic_centimeter>() - 3.1).abs() < 0.07);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn fill<R: Recorder>(r: &mut R, bearing: &Bearing, density_g_per_cm3: f64, fast_spindle: bool) -> Result<Fill, FormulaError> {
    use uom::si::length::millimeter;
    positive("the bore", bearing.bore.get::<millimeter>(), "mm")?;
    positive("the width", bearing.width.get::<millimeter>(), "mm")?;
    within("the bore", bearing.bore.get::<millimeter>(), "mm", (0.0, bearing.outside.get::<millimeter>()), sources::DEFINITION)?;
    positive("the density", density_g_per_cm3, "g/cm³")?;
    let free = free_space(r, bearing.bore, bearing.outside, bearing.width, bearing.mass);
    let volume = first_fill(r, free, fast_spindle);
    given!(r, V_g["cm³"] = volume.get::<cubic_centimeter>(), "grease to put in");
    given!(r, rho["g/cm³"] = density_g_per_cm3, "density of the grease");
    step!(r, G[gram] = rho * V_g, sources::DEFINITION);
    r.caution(Caution::Provided { that: "no more goes in: an overfilled bearing churns its grease hot and throws it out" });
    Ok(Fill { free, volume, mass: Mass::new::<gram>(G) })
}
