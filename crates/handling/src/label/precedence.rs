//! What outranks what on a label: signal words, statements and pictograms that another makes superfluous.

use reference::hazard::{Classified, HazardClass as H};
use schemars::JsonSchema;
use serde::Serialize;

use super::{Pictogram, Rules};

/// The signal word.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Signal {
    /// The lesser hazards.
    Warning,
    /// The greater hazards.
    Danger,
}

impl Signal {
    /// As it stands on the label.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Warning => "WARNING",
            Self::Danger => "DANGER",
        }
    }

    /// The word of one class; none where the standard asks for none.
    ///
    /// # Source
    /// UN GHS, Annex 1; *from memory*.
    #[must_use]
    pub const fn of(class: H) -> Option<Self> {
        Some(match class {
            H::FlamGas1A | H::FlamGas1B | H::Aerosol1 | H::OxGas1 | H::FlamLiq1 | H::FlamLiq2 | H::FlamSol1 | H::PyrSol1 => Self::Danger,
            H::SelfHeat1 | H::WaterReact1 | H::WaterReact2 | H::OxLiq1 | H::OxLiq2 | H::OxSol1 | H::OxSol2 => Self::Danger,
            H::OrgPeroxB | H::OrgPeroxCd => Self::Danger,
            H::AcuteTox1Oral | H::AcuteTox2Oral | H::AcuteTox3Oral => Self::Danger,
            H::AcuteTox1Dermal | H::AcuteTox2Dermal | H::AcuteTox3Dermal => Self::Danger,
            H::AcuteTox1Inhalation | H::AcuteTox2Inhalation | H::AcuteTox3Inhalation => Self::Danger,
            H::SkinCorr1 | H::SkinCorr1A | H::SkinCorr1B | H::SkinCorr1C | H::EyeDam1 | H::RespSens1 => Self::Danger,
            H::Muta1A | H::Muta1B | H::Carc1A | H::Carc1B | H::Repr1A | H::Repr1B => Self::Danger,
            H::StotSe1 | H::StotRe1 | H::AspTox1 => Self::Danger,
            H::Lact | H::AquaticAcute2 | H::AquaticAcute3 => return None,
            H::AquaticChronic2 | H::AquaticChronic3 | H::AquaticChronic4 => return None,
            _ => Self::Warning,
        })
    }
}

/// The signal word of a label: danger where any of its classes asks for it.
///
/// # Source
/// UN GHS 1.4.10.5.3.2.
#[must_use]
pub fn signal(classes: &[H]) -> Option<Signal> {
    classes.iter().filter_map(|class| Signal::of(*class)).max()
}

/// Leaves out the statements that another one already says.
///
/// # Source
/// UN GHS, Annex 3, A3.1.2; for spray cans Regulation (EC) No 1272/2008, Annex I, 1.3.3 and 2.3; *from memory*.
#[must_use]
pub fn prune(hazards: Vec<Classified>) -> Vec<Classified> {
    let said = |code: &str| hazards.iter().any(|hazard| hazard.statement == code);
    let sprayed = hazards.iter().any(|hazard| matches!(hazard.class, H::Aerosol1 | H::Aerosol2 | H::Aerosol3));
    let superfluous = |hazard: &Classified| match hazard.statement.as_str() {
        "H315" => said("H314"),
        "H318" => said("H314"),
        "H319" => said("H314") || said("H318"),
        "H400" => said("H410"),
        "H401" => said("H411") || said("H410"),
        "H402" => said("H412") || said("H411") || said("H410"),
        // What is sprayed from a sealed can is not swallowed, and the can's own class says that it burns.
        "H220" | "H221" | "H224" | "H225" | "H226" | "H227" | "H280" | "H304" => sprayed,
        _ => false,
    };
    let kept: Vec<bool> = hazards.iter().map(|hazard| !superfluous(hazard)).collect();
    hazards.into_iter().zip(kept).filter_map(|(hazard, keep)| keep.then_some(hazard)).collect()
}

/// The pictograms of a label, in the order of their numbers, less those that another outranks.
///
/// The skull outranks the exclamation mark: altogether by the UN and the European rules, by the American only where the mark would stand
/// for a poison too. Burns outrank the mark for irritation of skin and eyes; an allergy of the airways outranks it for skin.
///
/// # Source
/// UN GHS 1.4.10.5.3.1; Regulation (EC) No 1272/2008, Article 26; 29 CFR 1910.1200, Appendix C.2.1; *from memory*.
#[must_use]
pub fn pictograms(classes: &[H], rules: Rules) -> Vec<Pictogram> {
    let skull = classes.iter().any(|class| Pictogram::of(*class) == Some(Pictogram::Skull));
    // A mixture that only eats metal keeps the mark: the corrosion sign would not tell that it irritates.
    let burns = classes.iter().any(|class| *class != H::MetCorr1 && Pictogram::of(*class) == Some(Pictogram::Corrosion));
    let airways = classes.contains(&H::RespSens1);
    let outranked = |class: H| match class {
        H::AcuteTox4Oral | H::AcuteTox4Dermal | H::AcuteTox4Inhalation => skull,
        _ if skull && rules != Rules::Osha => true,
        H::SkinIrrit2 | H::EyeIrrit2 => burns || airways,
        H::SkinSens1 | H::SkinSens1A | H::SkinSens1B => airways,
        _ => false,
    };
    let shown = |class: &H| {
        let pictogram = Pictogram::of(*class)?;
        (pictogram != Pictogram::ExclamationMark || !outranked(*class)).then_some(pictogram)
    };
    let mut pictograms: Vec<_> = classes.iter().filter_map(shown).collect();
    // The one class with two pictograms: it explodes, and it burns.
    if classes.contains(&H::OrgPeroxB) {
        pictograms.push(Pictogram::Flame);
    }
    pictograms.sort_unstable();
    pictograms.dedup();
    pictograms
}
