//! The nine pictograms, drawn for this program after the symbols of the standard.

use reference::hazard::HazardClass;
use schemars::JsonSchema;
use serde::Serialize;

macro_rules! pictograms {
    ($($variant:ident = $code:literal $file:literal $about:literal),+ $(,)?) => {
        /// A black symbol on white in a red square that stands on its point.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, JsonSchema)]
        #[serde(rename_all = "kebab-case")]
        pub enum Pictogram { $(#[doc = concat!($code, ", ", $about, ".")] $variant),+ }

        impl Pictogram {
            /// All nine, in the order of their numbers.
            pub const ALL: [Self; 9] = [$(Self::$variant),+];

            /// The standard's code, such as `GHS02`.
            #[must_use]
            pub const fn code(self) -> &'static str {
                match self { $(Self::$variant => $code),+ }
            }

            /// The symbol in words.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $about),+ }
            }

            /// An SVG picture of its own, 100 by 100 units, with a title and a description for who cannot see it.
            #[must_use]
            pub const fn svg(self) -> &'static str {
                match self { $(Self::$variant => include_str!(concat!("pictograms/", $file))),+ }
            }
        }
    };
}

pictograms! {
    ExplodingBomb = "GHS01" "ghs01.svg" "exploding bomb",
    Flame = "GHS02" "ghs02.svg" "flame",
    FlameOverCircle = "GHS03" "ghs03.svg" "flame over circle",
    GasCylinder = "GHS04" "ghs04.svg" "gas cylinder",
    Corrosion = "GHS05" "ghs05.svg" "corrosion",
    Skull = "GHS06" "ghs06.svg" "skull and crossbones",
    ExclamationMark = "GHS07" "ghs07.svg" "exclamation mark",
    HealthHazard = "GHS08" "ghs08.svg" "health hazard",
    Environment = "GHS09" "ghs09.svg" "environment",
}

impl Pictogram {
    /// The pictogram of a class, before one drops another; none where the standard asks for none. Of two, the first.
    ///
    /// # Source
    /// UN GHS, Annex 1; *from memory*.
    #[must_use]
    pub const fn of(class: HazardClass) -> Option<Self> {
        use HazardClass as H;
        Some(match class {
            H::FlamGas1A | H::FlamGas1B | H::Aerosol1 | H::Aerosol2 | H::FlamLiq1 | H::FlamLiq2 | H::FlamLiq3 => Self::Flame,
            H::FlamSol1 | H::FlamSol2 | H::PyrSol1 | H::SelfHeat1 | H::SelfHeat2 => Self::Flame,
            H::WaterReact1 | H::WaterReact2 | H::WaterReact3 | H::OrgPeroxCd | H::OrgPeroxEf => Self::Flame,
            H::OrgPeroxB => Self::ExplodingBomb,
            H::OxGas1 | H::OxLiq1 | H::OxLiq2 | H::OxLiq3 | H::OxSol1 | H::OxSol2 | H::OxSol3 => Self::FlameOverCircle,
            H::PressGas => Self::GasCylinder,
            H::MetCorr1 | H::SkinCorr1 | H::SkinCorr1A | H::SkinCorr1B | H::SkinCorr1C | H::EyeDam1 => Self::Corrosion,
            H::AcuteTox1Oral | H::AcuteTox2Oral | H::AcuteTox3Oral => Self::Skull,
            H::AcuteTox1Dermal | H::AcuteTox2Dermal | H::AcuteTox3Dermal => Self::Skull,
            H::AcuteTox1Inhalation | H::AcuteTox2Inhalation | H::AcuteTox3Inhalation => Self::Skull,
            H::AcuteTox4Oral | H::AcuteTox4Dermal | H::AcuteTox4Inhalation => Self::ExclamationMark,
            H::SkinIrrit2 | H::EyeIrrit2 | H::StotSe3Irritation | H::StotSe3Narcotic => Self::ExclamationMark,
            H::SkinSens1 | H::SkinSens1A | H::SkinSens1B => Self::ExclamationMark,
            H::RespSens1 | H::Muta1A | H::Muta1B | H::Muta2 | H::Carc1A | H::Carc1B | H::Carc2 => Self::HealthHazard,
            H::Repr1A | H::Repr1B | H::Repr2 | H::StotSe1 | H::StotSe2 | H::StotRe1 | H::StotRe2 | H::AspTox1 => Self::HealthHazard,
            H::AquaticAcute1 | H::AquaticChronic1 | H::AquaticChronic2 => Self::Environment,
            _ => return None,
        })
    }

    /// The picture set into a larger one: its upper left corner and its width and height there.
    pub(super) fn placed(self, x: f64, y: f64, side: f64) -> String {
        let rest = self.svg().trim_start().trim_start_matches("<svg ");
        format!("<svg x=\"{x:.2}\" y=\"{y:.2}\" width=\"{side:.2}\" height=\"{side:.2}\" {rest}")
    }
}
