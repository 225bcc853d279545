//! All tables together, and how to look things up in them.

use std::sync::LazyLock;

use indexmap::IndexMap;

use crate::practice::{
    Cleaning, Cut, CuttingPower, DrillFactor, Finish, FinishRule, Locking, MetalFactor, Refusal, Sealing, TapFluid, TapPressure, ThreadKind,
};
use crate::storage::{StorageGroup, StoragePair};
use crate::thickener::ThickenerPair;
use crate::{
    Apart, BearingMaterial, Class, Climate, Compatibility, Currency, FILES, Fluid, Material, Operation, QuantityLimit, Rag, Source,
    SourceKey, Statement, Substance, Synonym, Template, Thickener, WasteStream, Weight,
};

/// The data of the trade. Tables keep the order of their files, which is the order in which ties are broken.
#[derive(Debug, Clone, Default)]
#[non_exhaustive]
pub struct Reference {
    /// The bibliography.
    pub sources: IndexMap<String, Source>,
    /// Classes of fluid.
    pub classes: IndexMap<String, Class>,
    /// What fluids are made of.
    pub substances: IndexMap<String, Substance>,
    /// Fluids.
    pub fluids: IndexMap<String, Fluid>,
    /// Materials.
    pub materials: IndexMap<String, Material>,
    /// What plain bushes carry.
    pub bearing_materials: IndexMap<String, BearingMaterial>,
    /// Thickeners of grease.
    pub thickeners: IndexMap<String, Thickener>,
    /// Which thickeners may meet; a pair that is not listed must not.
    pub thickener_pairs: Vec<ThickenerPair>,
    /// Storage groups.
    pub storage_groups: IndexMap<String, StorageGroup>,
    /// Hazard and precautionary statements, by code.
    pub statements: IndexMap<String, Statement>,
    /// Which storage groups stand apart; a pair that is not listed may stand together.
    pub storage_pairs: Vec<StoragePair>,
    /// Cutting fluid by material and operation.
    pub cuts: Vec<Cut>,
    /// Energy cutting takes, by material.
    pub cutting_powers: IndexMap<String, CuttingPower>,
    /// Drilling factor, by material.
    pub drill_factors: IndexMap<String, DrillFactor>,
    /// Specific cutting force in tapping, by material.
    pub tap_pressures: IndexMap<String, TapPressure>,
    /// What a fluid does to the torque of tapping, by class.
    pub tap_fluids: IndexMap<String, TapFluid>,
    /// What takes off which soil.
    pub cleanings: IndexMap<String, Cleaning>,
    /// What each finish leaves on the metal, by class.
    pub finishes: IndexMap<String, Finish>,
    /// Rules for choosing a finish; the first that applies decides.
    pub finish_rules: IndexMap<String, FinishRule>,
    /// Sealants by thread and medium.
    pub sealings: Vec<Sealing>,
    /// Joints for which no product is named.
    pub refusals: IndexMap<String, Refusal>,
    /// Threadlockers and retainers by case.
    pub lockings: IndexMap<String, Locking>,
    /// How well retaining compounds hold on a metal or a group of metals; see [`Reference::retaining_factor`].
    pub retaining_metals: IndexMap<String, MetalFactor>,
    /// Currencies by code.
    pub currencies: IndexMap<String, Currency>,
    /// Climates; the first is the one taken when none is given.
    pub climates: IndexMap<String, Climate>,
    /// What becomes of leftovers.
    pub waste_streams: IndexMap<String, WasteStream>,
    /// How rags are kept.
    pub rags: IndexMap<String, Rag>,
    /// How much of a kind may stand where.
    pub quantities: IndexMap<String, QuantityLimit>,
    /// What else people call things.
    pub synonyms: IndexMap<String, Synonym>,
    /// What happens to whoever goes without.
    pub consequences: IndexMap<String, Weight>,
    /// How often a need arises.
    pub frequencies: IndexMap<String, Weight>,
    /// Machine templates by name.
    pub templates: IndexMap<String, Template>,
}

impl Reference {
    /// The data compiled into the program.
    ///
    /// # Panics
    /// If they cannot be read, which is the program's own fault; a test proves that they can.
    #[must_use]
    pub fn embedded() -> &'static Self {
        static EMBEDDED: LazyLock<Reference> =
            LazyLock::new(|| Reference::parse(FILES).expect("the data compiled in are readable, as tests/embedded.rs proves"));
        &EMBEDDED
    }

    /// The fluid with this key.
    #[must_use]
    pub fn fluid(&self, key: &str) -> Option<&Fluid> {
        self.fluids.get(key)
    }

    /// The substance with this key.
    #[must_use]
    pub fn substance(&self, key: &str) -> Option<&Substance> {
        self.substances.get(key)
    }

    /// The fluids of a class, in order.
    pub fn fluids_of<'a>(&'a self, class: &'a str) -> impl Iterator<Item = &'a Fluid> {
        self.fluids.values().filter(move |fluid| fluid.classes.iter().any(|c| c == class))
    }

    /// The entry of the bibliography with this key.
    #[must_use]
    pub fn source(&self, key: SourceKey) -> Option<&Source> {
        self.sources.get(key.as_str())
    }

    /// The class with this key.
    #[must_use]
    pub fn class(&self, key: &str) -> Option<&Class> {
        self.classes.get(key)
    }

    /// The material with this key.
    #[must_use]
    pub fn material(&self, key: &str) -> Option<&Material> {
        self.materials.get(key)
    }

    /// True if `name` is the material `key` or a group it belongs to.
    #[must_use]
    pub fn is_a(&self, key: &str, name: &str) -> bool {
        key == name || self.material(key).is_some_and(|material| material.groups.iter().any(|group| group == name))
    }

    /// The bush material with this key.
    #[must_use]
    pub fn bearing_material(&self, key: &str) -> Option<&BearingMaterial> {
        self.bearing_materials.get(key)
    }

    /// The machine template with this name.
    #[must_use]
    pub fn template(&self, name: &str) -> Option<&Template> {
        self.templates.get(name)
    }

    /// The cutting fluids for a material and an operation: the row of the material itself, else that of its closest group.
    #[must_use]
    pub fn cut(&self, material: &str, operation: Operation) -> Option<&Cut> {
        let row = |name: &str| self.cuts.iter().find(|cut| cut.material == name && cut.operation == operation);
        row(material).or_else(|| self.material(material)?.groups.iter().find_map(|group| row(group)))
    }

    /// What takes off a soil.
    #[must_use]
    pub fn cleaning(&self, soil: &str) -> Option<&Cleaning> {
        self.cleanings.get(soil)
    }

    /// The sealants for a kind of thread and what runs in it.
    #[must_use]
    pub fn sealing(&self, thread: ThreadKind, medium: &str) -> Option<&Sealing> {
        self.sealings.iter().find(|row| row.thread == thread && row.medium == medium)
    }

    /// The threadlockers or retainers for a case.
    #[must_use]
    pub fn locking(&self, case: &str) -> Option<&Locking> {
        self.lockings.get(case)
    }

    /// How well a retaining compound holds on a material: the row of the material itself, else that of its closest group.
    #[must_use]
    pub fn retaining_factor(&self, material: &str) -> Option<&MetalFactor> {
        let row = |name: &str| self.retaining_metals.get(name);
        row(material).or_else(|| self.material(material)?.groups.iter().find_map(|group| row(group)))
    }

    /// Whether two greases may meet. What no row allows is incompatible.
    #[must_use]
    pub fn compatibility(&self, one: &str, other: &str) -> Compatibility {
        let meets = |row: &&ThickenerPair| is_pair(&row.pair, one, other);
        match self.thickener_pairs.iter().find(meets) {
            Some(row) => row.verdict,
            None if one == other => Compatibility::Compatible,
            None => Compatibility::Incompatible,
        }
    }

    /// How far apart two storage groups stand. What no row separates may stand together.
    #[must_use]
    pub fn apart(&self, one: &str, other: &str) -> Apart {
        self.storage_pair(one, other).map_or(Apart::Together, |row| row.apart)
    }

    /// The row that says why two storage groups stand apart.
    #[must_use]
    pub fn storage_pair(&self, one: &str, other: &str) -> Option<&StoragePair> {
        self.storage_pairs.iter().find(|row| is_pair(&row.pair, one, other))
    }

    /// The hazard or precautionary statement with this code.
    #[must_use]
    pub fn statement(&self, code: &str) -> Option<&Statement> {
        self.statements.get(code)
    }

    /// The currency with this ISO 4217 code.
    #[must_use]
    pub fn currency(&self, code: &str) -> Option<&Currency> {
        self.currencies.get(code)
    }

    /// The climate with this key.
    #[must_use]
    pub fn climate(&self, key: &str) -> Option<&Climate> {
        self.climates.get(key)
    }

    /// The weight of a consequence.
    #[must_use]
    pub fn consequence(&self, key: &str) -> Option<&Weight> {
        self.consequences.get(key)
    }

    /// The weight of a frequency.
    #[must_use]
    pub fn frequency(&self, key: &str) -> Option<&Weight> {
        self.frequencies.get(key)
    }
}

fn is_pair(pair: &[String; 2], one: &str, other: &str) -> bool {
    (pair[0] == one && pair[1] == other) || (pair[0] == other && pair[1] == one)
}
