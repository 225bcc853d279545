//! Hazard classes of the UN GHS, by the abbreviations of their classes and categories.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer};

macro_rules! classes {
    ($($variant:ident = $code:literal $statement:literal),+ $(,)?) => {
        /// A hazard class with its category.
        ///
        /// Written with the abbreviations of Regulation (EC) No 1272/2008, Annex VI, table 1.1, which are those of the UN GHS; in
        /// brackets stands what the abbreviation leaves open: the route of a poison, or which of the two effects.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[non_exhaustive]
        pub enum HazardClass { $(#[doc = concat!("`", $code, "`, ", $statement)] $variant),+ }

        impl HazardClass {
            /// All of them, in the order of the UN GHS.
            pub const ALL: &[Self] = &[$(Self::$variant),+];

            /// The abbreviation, such as `Flam. Liq. 2`.
            #[must_use]
            pub const fn code(self) -> &'static str {
                match self { $(Self::$variant => $code),+ }
            }

            /// The hazard statement of the class, such as `H225`; a substance may narrow it by letters (`H360FD`).
            #[must_use]
            pub const fn statement(self) -> &'static str {
                match self { $(Self::$variant => $statement),+ }
            }
        }
    };
}

classes! {
    FlamGas1A = "Flam. Gas 1A" "H220",
    FlamGas1B = "Flam. Gas 1B" "H221",
    FlamGas2 = "Flam. Gas 2" "H221",
    Aerosol1 = "Aerosol 1" "H222",
    Aerosol2 = "Aerosol 2" "H223",
    Aerosol3 = "Aerosol 3" "H229",
    OxGas1 = "Ox. Gas 1" "H270",
    PressGas = "Press. Gas" "H280",
    FlamLiq1 = "Flam. Liq. 1" "H224",
    FlamLiq2 = "Flam. Liq. 2" "H225",
    FlamLiq3 = "Flam. Liq. 3" "H226",
    FlamLiq4 = "Flam. Liq. 4" "H227",
    FlamSol1 = "Flam. Sol. 1" "H228",
    FlamSol2 = "Flam. Sol. 2" "H228",
    PyrSol1 = "Pyr. Sol. 1" "H250",
    SelfHeat1 = "Self-heat. 1" "H251",
    SelfHeat2 = "Self-heat. 2" "H252",
    WaterReact1 = "Water-react. 1" "H260",
    WaterReact2 = "Water-react. 2" "H261",
    WaterReact3 = "Water-react. 3" "H261",
    OxLiq1 = "Ox. Liq. 1" "H271",
    OxLiq2 = "Ox. Liq. 2" "H272",
    OxLiq3 = "Ox. Liq. 3" "H272",
    OxSol1 = "Ox. Sol. 1" "H271",
    OxSol2 = "Ox. Sol. 2" "H272",
    OxSol3 = "Ox. Sol. 3" "H272",
    OrgPeroxB = "Org. Perox. B" "H241",
    OrgPeroxCd = "Org. Perox. CD" "H242",
    OrgPeroxEf = "Org. Perox. EF" "H242",
    MetCorr1 = "Met. Corr. 1" "H290",
    AcuteTox1Oral = "Acute Tox. 1 (oral)" "H300",
    AcuteTox2Oral = "Acute Tox. 2 (oral)" "H300",
    AcuteTox3Oral = "Acute Tox. 3 (oral)" "H301",
    AcuteTox4Oral = "Acute Tox. 4 (oral)" "H302",
    AcuteTox1Dermal = "Acute Tox. 1 (dermal)" "H310",
    AcuteTox2Dermal = "Acute Tox. 2 (dermal)" "H310",
    AcuteTox3Dermal = "Acute Tox. 3 (dermal)" "H311",
    AcuteTox4Dermal = "Acute Tox. 4 (dermal)" "H312",
    AcuteTox1Inhalation = "Acute Tox. 1 (inhalation)" "H330",
    AcuteTox2Inhalation = "Acute Tox. 2 (inhalation)" "H330",
    AcuteTox3Inhalation = "Acute Tox. 3 (inhalation)" "H331",
    AcuteTox4Inhalation = "Acute Tox. 4 (inhalation)" "H332",
    SkinCorr1 = "Skin Corr. 1" "H314",
    SkinCorr1A = "Skin Corr. 1A" "H314",
    SkinCorr1B = "Skin Corr. 1B" "H314",
    SkinCorr1C = "Skin Corr. 1C" "H314",
    SkinIrrit2 = "Skin Irrit. 2" "H315",
    EyeDam1 = "Eye Dam. 1" "H318",
    EyeIrrit2 = "Eye Irrit. 2" "H319",
    RespSens1 = "Resp. Sens. 1" "H334",
    SkinSens1 = "Skin Sens. 1" "H317",
    SkinSens1A = "Skin Sens. 1A" "H317",
    SkinSens1B = "Skin Sens. 1B" "H317",
    Muta1A = "Muta. 1A" "H340",
    Muta1B = "Muta. 1B" "H340",
    Muta2 = "Muta. 2" "H341",
    Carc1A = "Carc. 1A" "H350",
    Carc1B = "Carc. 1B" "H350",
    Carc2 = "Carc. 2" "H351",
    Repr1A = "Repr. 1A" "H360",
    Repr1B = "Repr. 1B" "H360",
    Repr2 = "Repr. 2" "H361",
    Lact = "Lact." "H362",
    StotSe1 = "STOT SE 1" "H370",
    StotSe2 = "STOT SE 2" "H371",
    StotSe3Irritation = "STOT SE 3 (irritation)" "H335",
    StotSe3Narcotic = "STOT SE 3 (narcotic)" "H336",
    StotRe1 = "STOT RE 1" "H372",
    StotRe2 = "STOT RE 2" "H373",
    AspTox1 = "Asp. Tox. 1" "H304",
    AquaticAcute1 = "Aquatic Acute 1" "H400",
    AquaticAcute2 = "Aquatic Acute 2" "H401",
    AquaticAcute3 = "Aquatic Acute 3" "H402",
    AquaticChronic1 = "Aquatic Chronic 1" "H410",
    AquaticChronic2 = "Aquatic Chronic 2" "H411",
    AquaticChronic3 = "Aquatic Chronic 3" "H412",
    AquaticChronic4 = "Aquatic Chronic 4" "H413",
}

impl fmt::Display for HazardClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.code())
    }
}

/// A hazard class that cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum HazardError {
    /// No class has this abbreviation.
    #[error("`{0}` is no hazard class; write its abbreviation, such as `Flam. Liq. 2` or `Acute Tox. 3 (oral)`")]
    Class(String),
    /// The statement belongs to another class.
    #[error("`{statement}` is no statement of {class}, whose own is {}", class.statement())]
    Statement {
        /// The class.
        class: HazardClass,
        /// The statement that stands beside it.
        statement: String,
    },
}

impl FromStr for HazardClass {
    type Err = HazardError;

    fn from_str(text: &str) -> Result<Self, HazardError> {
        Self::ALL.iter().copied().find(|class| class.code() == text).ok_or_else(|| HazardError::Class(text.to_owned()))
    }
}

impl<'de> Deserialize<'de> for HazardClass {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
    }
}

/// A hazard class and the statement that goes with it for one substance.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Classified {
    /// The class with its category.
    pub class: HazardClass,
    /// The statement: the class's own, perhaps narrowed by letters (`H360FD`).
    pub statement: String,
}

impl fmt::Display for Classified {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.class, self.statement)
    }
}

impl FromStr for Classified {
    type Err = HazardError;

    /// Reads `Flam. Liq. 2: H225`; without a statement it is the class's own.
    fn from_str(text: &str) -> Result<Self, HazardError> {
        let (class, statement) = text.split_once(": ").unwrap_or((text, ""));
        let class: HazardClass = class.parse()?;
        let statement = if statement.is_empty() { class.statement() } else { statement };
        let letters = statement.strip_prefix(class.statement());
        if letters.is_some_and(|letters| letters.bytes().all(|byte| byte.is_ascii_alphabetic())) {
            Ok(Self { class, statement: statement.to_owned() })
        } else {
            Err(HazardError::Statement { class, statement: statement.to_owned() })
        }
    }
}

impl<'de> Deserialize<'de> for Classified {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
    }
}
