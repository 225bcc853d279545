//! More opinions on a gear's oil: the American table by speed and air, worms, and open gears, whose question is another.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{Area, KinematicViscosity, Length, Range, Temperature, Velocity, Volume};
use uom::si::area::square_millimeter;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::{micrometer, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::velocity::meter_per_second;

use super::{Mesh, gear_viscosity};
use crate::error::{FormulaError, positive, within};
use crate::math::{max, min};
use crate::slideway::film_dose;
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Midpoints at 40 °C of the lubricant numbers 0 to 8, mm²/s.
const NUMBERS: [f64; 9] = [32.0, 46.0, 68.0, 100.0, 150.0, 220.0, 320.0, 460.0, 680.0];

/// The table of edition D94: from this pitch-line speed on (m/s), the number in air of −40 to −10 °C (synthetic), −10 to 10, 10 to 35 and
/// 35 to 55 °C. From memory.
const ENCLOSED: [(f64, [usize; 4]); 4] = [(0.0, [3, 4, 5, 6]), (5.0, [3, 3, 4, 5]), (15.0, [2, 2, 3, 4]), (25.0, [0, 0, 2, 3])];
/// The same for cylindrical worms; all but the coldest and hottest are compounded. From memory.
const WORM: [(f64, [usize; 4]); 2] = [(0.0, [5, 7, 8, 8]), (2.25, [5, 7, 7, 7])];
/// Air temperatures the columns begin at, and the last one ends at, °C.
const COLUMNS: [f64; 5] = [-40.0, -10.0, 10.0, 35.0, 55.0];

/// A grade as the American standard gives it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AgmaGrade {
    /// The standard's number.
    pub number: u8,
    /// Midpoint of the ISO grade it stands for, mm²/s at 40 °C.
    pub grade: f64,
    /// Whether only a synthetic oil stays fluid there.
    pub synthetic: bool,
    /// Whether it is compounded with fat, as worms want it.
    pub compounded: bool,
}

fn look_up<R: Recorder>(
    r: &mut R,
    table: &[(f64, [usize; 4])],
    speed: Velocity,
    air: Temperature,
) -> Result<(AgmaGrade, usize), FormulaError> {
    given!(r, v[meter_per_second] = speed, "speed of the pitch line");
    given!(r, t[degree_celsius] = air, "temperature of the air round the gears");
    within("the speed of the pitch line", v, "m/s", (0.0, 80.0), sources::AGMA_9005)?;
    within("the temperature of the air", t, "°C", (COLUMNS[0], COLUMNS[4]), sources::AGMA_9005)?;
    let column = COLUMNS[1..4].iter().filter(|start| t >= **start).count();
    let row = table.iter().rev().find(|(from, _)| v >= *from).map_or([0; 4], |(_, row)| *row);
    let index = row.get(column).copied().unwrap_or(0);
    let grade = NUMBERS.get(index).copied().unwrap_or(NUMBERS[0]);
    given!(r, nu_40[mm2_per_s] = KinematicViscosity::new::<mm2_per_s>(grade), "grade the table gives");
    let number = u8::try_from(index).unwrap_or(0);
    Ok((AgmaGrade { number, grade, synthetic: column == 0, compounded: false }, column))
}

/// Grade of an enclosed spur, helical or bevel gear by its pitch-line speed and the air round it.
///
/// | m/s | −40 to −10 °C | −10 to 10 | 10 to 35 | 35 to 55 |
/// | --- | --- | --- | --- | --- |
/// | below 5 | 100 synthetic | 150 | 220 | 320 |
/// | 5 to 15 | 100 synthetic | 100 | 150 | 220 |
/// | 15 to 25 | 68 synthetic | 68 | 100 | 150 |
/// | above | 32 synthetic | 32 | 68 | 100 |
///
/// # Range
/// Air of −40 to 55 °C; oils of index 90. A geared head runs about 25 K above the air.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside, or above 80 m/s.
///
/// # Source
/// AGMA 9005, table of edition D94, *from memory*. Edition F16's annex B gives VG 150 at 5 m/s for oil of 50 °C, which is air of 25 °C.
///
/// # Example
/// ```
/// use formulas::{Silent, gear::agma_grade};
/// use uom::si::f64::{ThermodynamicTemperature, Velocity};
/// use uom::si::{thermodynamic_temperature::degree_celsius, velocity::meter_per_second};
/// let air = ThermodynamicTemperature::new::<degree_celsius>(25.0);
/// let found = agma_grade(&mut Silent, Velocity::new::<meter_per_second>(5.0), air)?;
/// assert_eq!((found.number, found.grade), (4, 150.0));
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn agma_grade<R: Recorder>(r: &mut R, speed: Velocity, air: Temperature) -> Result<AgmaGrade, FormulaError> {
    Ok(look_up(r, &ENCLOSED, speed, air)?.0)
}

/// Grade of a cylindrical worm by its speed and the air round it: compounded VG 460 to 680.
///
/// # Range
/// As [`agma_grade`].
///
/// # Errors
/// As [`agma_grade`].
///
/// # Source
/// AGMA 9005, table of edition D94, *from memory*.
///
/// # Example
/// ```
/// use formulas::{Silent, gear::worm_grade};
/// use uom::si::f64::{ThermodynamicTemperature, Velocity};
/// use uom::si::{thermodynamic_temperature::degree_celsius, velocity::meter_per_second};
/// let air = ThermodynamicTemperature::new::<degree_celsius>(20.0);
/// let found = worm_grade(&mut Silent, Velocity::new::<meter_per_second>(3.0), air)?;
/// assert!(found.compounded && found.grade == 460.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn worm_grade<R: Recorder>(r: &mut R, speed: Velocity, air: Temperature) -> Result<AgmaGrade, FormulaError> {
    let (grade, column) = look_up(r, &WORM, speed, air)?;
    r.caution(Caution::Provided {
        that: "the oil has no active sulphur, which blackens and eats a bronze wheel; fat or inactive additives do it no harm",
    });
    let compounded = column == 1 || column == 2;
    Ok(AgmaGrade { compounded, ..grade })
}

/// The three opinions on an enclosed gear's oil, as viscosities at 40 °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GearOpinions {
    /// The German diagram and the American rule of thumb ([`gear_viscosity`]).
    pub by_load_and_speed: Range<KinematicViscosity>,
    /// The American table.
    pub by_speed_and_air: AgmaGrade,
    /// The span of all three, with their middle one as the likely value.
    pub all: Range<KinematicViscosity>,
}

/// All opinions on an enclosed spur or helical gear's oil.
///
/// # Errors
/// As [`gear_viscosity`] and [`agma_grade`].
///
/// # Source
/// DIN 51509-1, *ASM Handbook* volume 18, AGMA 9005: all *from memory*.
pub fn gear_opinions<R: Recorder>(r: &mut R, mesh: &Mesh, air: Temperature) -> Result<GearOpinions, FormulaError> {
    let by_load_and_speed = gear_viscosity(r, mesh)?;
    let by_speed_and_air = agma_grade(r, mesh.speed, air)?;
    given!(r, nu_1[mm2_per_s] = by_load_and_speed.low, "the lower of the first two opinions");
    given!(r, nu_2[mm2_per_s] = by_load_and_speed.high, "the higher of them");
    given!(r, nu_3[mm2_per_s] = KinematicViscosity::new::<mm2_per_s>(by_speed_and_air.grade), "the table's");
    step!(r, nu_low[mm2_per_s] = min(nu_1, nu_3), sources::COMMON_PRACTICE);
    step!(r, nu[mm2_per_s] = max(nu_1, min(nu_2, nu_3)), sources::COMMON_PRACTICE);
    step!(r, nu_high[mm2_per_s] = max(nu_2, nu_3), sources::COMMON_PRACTICE);
    let [low, likely, high] = [nu_low, nu, nu_high].map(KinematicViscosity::new::<mm2_per_s>);
    Ok(GearOpinions { by_load_and_speed, by_speed_and_air, all: Range { low, likely, high } })
}

/// What serves an open gear in place of a bath.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum OpenMedium {
    /// Adhesive grease, brushed on thin.
    AdhesiveGrease,
    /// A soft or semi-fluid grease, under a guard.
    SemiFluidGrease,
    /// A tacky oil, brushed on often, under a guard: anything stiffer is thrown off.
    TackyOil,
    /// None: so fast, gears belong in a bath.
    Enclose,
}

/// What serves an open gear at its speed: adhesive grease to 2.5 m/s, semi-fluid grease to 4, above it oil; beyond 15 m/s nothing stays.
///
/// # Source
/// DIN 51509, *from memory*; open gears faster than 4 m/s take tacky oil by *common practice*.
///
/// # Example
/// ```
/// use formulas::gear::{OpenMedium, open_gear_medium};
/// use uom::si::{f64::Velocity, velocity::meter_per_second};
/// assert_eq!(open_gear_medium(Velocity::new::<meter_per_second>(1.0)), OpenMedium::AdhesiveGrease);
/// ```
#[must_use]
pub fn open_gear_medium(speed: Velocity) -> OpenMedium {
    match speed.get::<meter_per_second>() {
        v if v <= 2.5 => OpenMedium::AdhesiveGrease,
        v if v <= 4.0 => OpenMedium::SemiFluidGrease,
        v if v <= 15.0 => OpenMedium::TackyOil,
        _ => OpenMedium::Enclose,
    }
}

/// Dose of a pair of open gears: a film of 30 µm on both flanks of every tooth, A = 2·z·b·2.25·m.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `z` | teeth of both gears together | – |
/// | `b` | face width | mm |
/// | `m` | module; a flank is as deep as a tooth, 2.25·m | mm |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension of nothing.
///
/// # Source
/// Geometry; the film is *common practice, no source*.
///
/// # Example
/// Change gears of 40 and 60 teeth, module 1, 10 mm wide, take 0.135 mL (by hand).
/// ```
/// use formulas::{Silent, gear::open_gear_dose};
/// use uom::si::{f64::Length, length::millimeter, volume::milliliter};
/// let mm = Length::new::<millimeter>;
/// let dose = open_gear_dose(&mut Silent, 100.0, mm(10.0), mm(1.0))?;
/// assert!((dose.get::<milliliter>() - 0.135).abs() < 1e-6);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn open_gear_dose<R: Recorder>(r: &mut R, teeth: f64, face: Length, module: Length) -> Result<Volume, FormulaError> {
    given!(r, z [] = teeth, "teeth of both gears together");
    given!(r, b[millimeter] = face, "face width");
    given!(r, m[millimeter] = module, "module");
    positive("the number of teeth", z, "")?;
    positive("the face width", b, "mm")?;
    positive("the module", m, "mm")?;
    step!(r, A[square_millimeter] = 2.0 * z * b * 2.25 * m, sources::DEFINITION);
    Ok(film_dose(r, Area::new::<square_millimeter>(A), Length::new::<micrometer>(30.0)))
}
