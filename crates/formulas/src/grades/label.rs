//! What a label of an engine or gear oil says at 40 °C, where industrial oils are graded.

use units::KinematicViscosity;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;

use super::{HotGrade, hot, open};
use crate::error::FormulaError;
use crate::viscosity_index::viscosity_40_from_index;
use crate::working::{Caution, Recorder};

/// Which standard a label's number belongs to: the same number means another oil in each.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Family {
    /// Engine oils, SAE J300.
    Engine,
    /// Gear oils, SAE J306.
    Gear,
}

/// The winter grades of engine oils: all J300 asks of them at 100 °C is a least viscosity (*from memory*).
const ENGINE_WINTER: [HotGrade; 6] =
    [open("0W", 3.8), open("5W", 3.8), open("10W", 4.1), open("15W", 5.6), open("20W", 5.6), open("25W", 9.3)];
/// The thin engine grades of the issues since 2013 (16) and 2015 (8 and 12), *from memory*.
const ENGINE_THIN: [(u16, HotGrade); 3] = [(2015, hot("8", 4.0, 6.1)), (2015, hot("12", 5.0, 7.1)), (2013, hot("16", 6.1, 8.2))];
/// SAE 20 before the issue of 2013, *from memory*.
const ENGINE_20_BEFORE_2013: HotGrade = hot("20", 5.6, 9.3);
/// The gear grades that stood otherwise before February 2019; those of 70W and 75W *from memory*.
const GEAR_BEFORE_2019: [HotGrade; 4] = [open("70W", 4.1), open("75W", 4.1), open("80W", 7.0), hot("80", 7.0, 11.0)];
/// The gear grades of February 2019 that no earlier issue had.
const GEAR_SINCE_2019: [&str; 3] = ["65", "70", "75"];
/// The gear grades that stood otherwise before the issue of 2005 put 110 and 190 between them, *from memory*.
const GEAR_BEFORE_2005: [HotGrade; 2] = [hot("90", 13.5, 24.0), hot("140", 24.0, 41.0)];
/// The gear grades the issue of 2005 brought.
const GEAR_SINCE_2005: [&str; 2] = ["110", "190"];

/// A label, read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Label {
    /// The grade that holds at 100 °C.
    pub grade: HotGrade,
    /// Whether the label names a winter grade and a summer one.
    pub multigrade: bool,
}

impl Label {
    /// The viscosity index to count on where the label gives none: 150 for a multigrade, else 95 (*common practice, no source*).
    #[must_use]
    pub fn usual_index(self) -> f64 {
        if self.multigrade { 150.0 } else { 95.0 }
    }
}

/// Reads a label: `90`, `SAE 30`, `80W-90`, `75W`. The year is that of the label, which says the issue of the standard it follows.
///
/// # Range
/// Labels since 1960. A label without a year is best read with this year's; old stock is then taken a little too thick.
///
/// # Source
/// SAE J300, and J306 in its issues of February 2019 and 2005; earlier limits *from memory*.
///
/// # Example
/// Gear grade 80 begins at 8.5 mm²/s at 100 °C since 2019, and at 7.0 on older labels.
/// ```
/// use formulas::grades::{Family, read_label};
/// assert_eq!(read_label(Family::Gear, "SAE 80", 2024).map(|label| label.grade.low), Some(8.5));
/// assert_eq!(read_label(Family::Gear, "80", 2010).map(|label| label.grade.low), Some(7.0));
/// assert_eq!(read_label(Family::Gear, "80W-90", 2024).map(|label| label.grade.name), Some("90"));
/// assert_eq!(read_label(Family::Engine, "90", 2024), None);
/// ```
#[must_use]
pub fn read_label(family: Family, text: &str, year: u16) -> Option<Label> {
    let upper = text.trim().to_ascii_uppercase();
    let words = upper.strip_prefix("SAE").unwrap_or(&upper).trim();
    let find = |name: &str| match family {
        Family::Engine => engine(name, year),
        Family::Gear => gear(name, year),
    };
    // The winter half of a multigrade speaks of cold starts; the other holds at 100 °C.
    match words.split_once(['-', '/']) {
        Some((winter, summer)) => {
            let (winter, summer) = (find(winter.trim())?, find(summer.trim())?);
            (winter.name.ends_with('W') && !summer.name.ends_with('W')).then_some(Label { grade: summer, multigrade: true })
        }
        None => find(words).map(|grade| Label { grade, multigrade: false }),
    }
}

fn named(grades: &[HotGrade], name: &str) -> Option<HotGrade> {
    grades.iter().find(|grade| grade.name == name).copied()
}

fn engine(name: &str, year: u16) -> Option<HotGrade> {
    if name == "20" && year < 2013 {
        return Some(ENGINE_20_BEFORE_2013);
    }
    let thin = ENGINE_THIN.iter().find(|(since, grade)| year >= *since && grade.name == name).map(|(_, grade)| *grade);
    thin.or_else(|| named(&ENGINE_WINTER, name)).or_else(|| named(&super::SAE_ENGINE, name))
}

fn gear(name: &str, year: u16) -> Option<HotGrade> {
    if year < 2019 && GEAR_SINCE_2019.contains(&name) || year < 2005 && GEAR_SINCE_2005.contains(&name) {
        return None;
    }
    let before_2005 = if year < 2005 { named(&GEAR_BEFORE_2005, name) } else { None };
    let before_2019 = if year < 2019 { named(&GEAR_BEFORE_2019, name) } else { None };
    before_2005.or(before_2019).or_else(|| named(&super::SAE_GEAR, name))
}

/// The viscosities at 40 °C a label may stand for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct At40 {
    /// Of the thinnest oil the label allows.
    pub low: KinematicViscosity,
    /// Of the thickest; none where the grade is open.
    pub high: Option<KinematicViscosity>,
}

/// Viscosity at 40 °C of an oil sold by its viscosity at 100 °C, through its viscosity index.
///
/// # Range
/// Grades of 2 mm²/s and more at 100 °C: all of them. A polymer-thickened oil thins further where it is sheared.
///
/// # Errors
/// As [`viscosity_40_from_index`].
///
/// # Source
/// ASTM D2270 on the limits of the label.
///
/// # Example
/// Gear oil 90 with an index of 95 lies between 134 and 216 mm²/s at 40 °C: VG 150 to 220 (computed independently, within 2 %).
/// ```
/// use formulas::{Silent, grades::{Family, read_label, viscosity_40_of_label}};
/// use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
/// let label = read_label(Family::Gear, "90", 2024).ok_or("no such grade")?;
/// let at_40 = viscosity_40_of_label(&mut Silent, label, 95.0)?;
/// assert!((at_40.low.get::<mm2_per_s>() - 134.0).abs() < 2.7);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn viscosity_40_of_label<R: Recorder>(r: &mut R, label: Label, index: f64) -> Result<At40, FormulaError> {
    let nu = KinematicViscosity::new::<mm2_per_s>;
    let low = viscosity_40_from_index(r, nu(label.grade.low), index)?;
    let high = label.grade.high.map(|high| viscosity_40_from_index(r, nu(high), index)).transpose()?;
    if label.multigrade {
        r.caution(Caution::Provided {
            that: "the polymer in a multigrade oil keeps its strength; gears shear it, and the oil then runs thinner",
        });
    }
    Ok(At40 { low, high })
}
