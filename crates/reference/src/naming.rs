//! What things are called when people read of them.

use units::Temperature;

use crate::{Fluid, Reference, Trait};

impl Fluid {
    /// Whether a word names this fluid: its key or one of its classes.
    #[must_use]
    pub fn is(&self, word: &str) -> bool {
        self.key == word || self.classes.iter().any(|class| class == word)
    }

    /// The hottest steady service, for products that have such a limit.
    #[must_use]
    pub fn hottest_service(&self) -> Option<Temperature> {
        let grease = self.grease.as_ref().map(|grease| grease.hottest);
        let bond = self.bond.as_ref().map(|bond| bond.hottest);
        grease.or(bond).or_else(|| self.hottest.as_ref().map(|hottest| hottest.value))
    }
}

impl Reference {
    /// The name behind a key of a fluid, a class or a material; the key itself where it is none of them.
    #[must_use]
    pub fn name_of(&self, key: &str) -> String {
        let fluid = self.fluid(key).map(|fluid| fluid.name.as_str());
        let class = || self.class(key).map(|class| class.name.as_str());
        let material = || self.material(key).map(|material| material.name.as_str());
        fluid.or_else(class).or_else(material).unwrap_or(key).to_owned()
    }

    /// The name of a thickener of grease.
    #[must_use]
    pub fn thickener_name(&self, key: &str) -> String {
        self.thickeners.get(key).map_or_else(|| key.to_owned(), |thickener| thickener.name.clone())
    }

    /// The name of a fluid's main class.
    #[must_use]
    pub fn class_name(&self, fluid: &Fluid) -> String {
        fluid.classes.first().map_or_else(|| fluid.name.clone(), |class| self.name_of(class))
    }
}

/// A consistency as ASTM D217 numbers it, from NLGI 000 (-2) to NLGI 6.
#[must_use]
pub fn nlgi(consistency: i8) -> String {
    match consistency {
        -2 => "NLGI 000".to_owned(),
        -1 => "NLGI 00".to_owned(),
        number => format!("NLGI {number}"),
    }
}

impl Trait {
    /// In words, as part of a sentence: "has active sulphur".
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::RustInhibited => "rust inhibitor",
            Self::OxidationInhibited => "oxidation inhibitor",
            Self::Antiwear => "antiwear additives",
            Self::InactiveEp => "extreme-pressure additives that spare copper",
            Self::ActiveSulphur => "active sulphur",
            Self::HypoidEp => "hypoid (GL-5) additives",
            Self::Fatty => "fat",
            Self::Tackifier => "tackifier",
            Self::Detergent => "detergent",
            Self::Emulsifier => "emulsifier",
            Self::PolymerThickened => "polymer thickener",
            Self::Graphite => "graphite",
            Self::Molybdenum => "molybdenum disulphide",
            Self::Ptfe => "PTFE",
            Self::Zinc => "zinc additives",
            Self::Copper => "copper",
            Self::Chlorinated => "chlorine compounds",
            Self::Silicone => "silicone",
            Self::DryingOil => "drying oil",
            Self::Vegetable => "vegetable oil",
            Self::Solvent => "solvent",
            Self::WaterMix => "water",
            Self::WaterDisplacing => "water displacer",
            Self::Aerosol => "propellant gas",
            Self::LowOdour => "little smell",
            Self::StrongOdour => "strong smell",
            Self::Caustic => "alkali",
            Self::Acid => "acid",
            Self::Anaerobic => "anaerobic resin",
            Self::Sensitiser => "skin sensitiser",
            Self::Ammonia => "ammonia",
            Self::Cadmium => "cadmium",
        }
    }
}
