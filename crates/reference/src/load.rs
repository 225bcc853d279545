//! Reads the data files.

use indexmap::IndexMap;
use serde::Deserialize;
use serde::de::DeserializeOwned;

use crate::practice::{
    Cleaning, Cut, CuttingPower, DrillFactor, Finish, FinishRule, Locking, MetalFactor, Refusal, Sealing, TapFluid, TapPressure,
};
use crate::storage::{StorageGroup, StoragePair};
use crate::thickener::ThickenerPair;
use crate::{
    BearingMaterial, Class, Climate, Currency, DataError, DataFile, Fluid, Material, QuantityLimit, Rag, Reference, Source, Statement,
    Substance, Synonym, Template, Thickener, WasteStream, Weight,
};

/// One shape of file: the tables it may hold, each a list of rows.
macro_rules! shape {
    ($name:ident { $($field:ident: $row:ty = $key:literal),+ $(,)? }) => {
        #[derive(Deserialize)]
        #[serde(deny_unknown_fields)]
        struct $name { $(#[serde(rename = $key, default = "Vec::new")] $field: Vec<$row>),+ }
    };
}

shape!(Sources { rows: Source = "source" });
shape!(Classes { rows: Class = "class" });
shape!(Substances { rows: Substance = "substance" });
shape!(Fluids { rows: Fluid = "fluid" });
shape!(Materials { rows: Material = "material" });
shape!(BearingMaterials { rows: BearingMaterial = "bearing-material" });
shape!(Thickeners { rows: Thickener = "thickener", pairs: ThickenerPair = "pair" });
shape!(Storage { rows: StorageGroup = "group", pairs: StoragePair = "pair" });
shape!(Cutting {
    cuts: Cut = "cut",
    powers: CuttingPower = "power",
    drills: DrillFactor = "drill",
    taps: TapPressure = "tap",
    tap_fluids: TapFluid = "tap-fluid"
});
shape!(CleaningRows { rows: Cleaning = "cleaning" });
shape!(Finishing { rows: Finish = "finish", rules: FinishRule = "rule" });
shape!(SealingRows { rows: Sealing = "sealing", refusals: Refusal = "refusal" });
shape!(LockingRows { rows: Locking = "locking", metals: MetalFactor = "metal" });
shape!(Currencies { rows: Currency = "currency" });
shape!(Climates { rows: Climate = "climate" });
shape!(Waste { rows: WasteStream = "stream" });
shape!(Rags { rows: Rag = "rag" });
shape!(Quantities { rows: QuantityLimit = "quantity" });
shape!(Statements { rows: Statement = "statement" });
shape!(Synonyms { rows: Synonym = "synonym" });
shape!(Weights { rows: Weight = "weight" });

impl Reference {
    /// Reads a set of data files.
    ///
    /// # Errors
    /// The first fault that keeps the data from being read. What can be read and does not fit together is listed by
    /// [`Reference::faults`].
    pub fn parse(files: &[DataFile<'_>]) -> Result<Self, DataError> {
        let mut reference = Self::default();
        for file in files {
            reference.read(file)?;
        }
        Ok(reference)
    }

    fn read(&mut self, file: &DataFile<'_>) -> Result<(), DataError> {
        match file.path {
            "sources.toml" => add(&mut self.sources, "sources", rows::<Sources>(file)?.rows, |row| &row.key),
            "classes.toml" => add(&mut self.classes, "classes", rows::<Classes>(file)?.rows, |row| &row.key),
            "materials.toml" => add(&mut self.materials, "materials", rows::<Materials>(file)?.rows, |row| &row.key),
            "bearing_materials.toml" => {
                add(&mut self.bearing_materials, "bearing materials", rows::<BearingMaterials>(file)?.rows, |row| &row.key)
            }
            "thickeners.toml" => {
                let table: Thickeners = rows(file)?;
                self.thickener_pairs.extend(table.pairs);
                add(&mut self.thickeners, "thickeners", table.rows, |row| &row.key)
            }
            "storage.toml" => {
                let table: Storage = rows(file)?;
                self.storage_pairs.extend(table.pairs);
                add(&mut self.storage_groups, "storage groups", table.rows, |row| &row.key)
            }
            "currencies.toml" => add(&mut self.currencies, "currencies", rows::<Currencies>(file)?.rows, |row| &row.code),
            "statements.toml" => add(&mut self.statements, "statements", rows::<Statements>(file)?.rows, |row| &row.code),
            "synonyms.toml" => add(&mut self.synonyms, "synonyms", rows::<Synonyms>(file)?.rows, |row| &row.word),
            "climates.toml" => add(&mut self.climates, "climates", rows::<Climates>(file)?.rows, |row| &row.key),
            "waste.toml" => add(&mut self.waste_streams, "waste streams", rows::<Waste>(file)?.rows, |row| &row.key),
            "rags.toml" => add(&mut self.rags, "kinds of rag", rows::<Rags>(file)?.rows, |row| &row.key),
            "quantities.toml" => add(&mut self.quantities, "quantities", rows::<Quantities>(file)?.rows, |row| &row.key),
            "consequences.toml" => add(&mut self.consequences, "consequences", rows::<Weights>(file)?.rows, |row| &row.key),
            "frequencies.toml" => add(&mut self.frequencies, "frequencies", rows::<Weights>(file)?.rows, |row| &row.key),
            path if path.starts_with("substances/") => {
                add(&mut self.substances, "substances", rows::<Substances>(file)?.rows, |row| &row.key)
            }
            path if path.starts_with("fluids/") => add(&mut self.fluids, "fluids", rows::<Fluids>(file)?.rows, |row| &row.key),
            path if path.starts_with("templates/") => add(&mut self.templates, "templates", vec![rows::<Template>(file)?], |row| &row.name),
            path if path.starts_with("practices/") => self.read_practice(file),
            path => Err(DataError::UnknownFile { file: path.to_owned() }),
        }
    }

    fn read_practice(&mut self, file: &DataFile<'_>) -> Result<(), DataError> {
        match file.path {
            "practices/cutting.toml" => {
                let table: Cutting = rows(file)?;
                self.cuts.extend(table.cuts);
                add(&mut self.cutting_powers, "cutting powers", table.powers, |row| &row.material)?;
                add(&mut self.drill_factors, "drilling factors", table.drills, |row| &row.material)?;
                add(&mut self.tap_pressures, "tapping forces", table.taps, |row| &row.material)?;
                add(&mut self.tap_fluids, "tapping fluids", table.tap_fluids, |row| &row.class)
            }
            "practices/cleaning.toml" => add(&mut self.cleanings, "soils", rows::<CleaningRows>(file)?.rows, |row| &row.soil),
            "practices/finishing.toml" => {
                let table: Finishing = rows(file)?;
                add(&mut self.finishes, "finishes", table.rows, |row| &row.class)?;
                add(&mut self.finish_rules, "finishing rules", table.rules, |row| &row.key)
            }
            "practices/sealing.toml" => {
                let table: SealingRows = rows(file)?;
                self.sealings.extend(table.rows);
                add(&mut self.refusals, "refusals", table.refusals, |row| &row.key)
            }
            "practices/locking.toml" => {
                let table: LockingRows = rows(file)?;
                add(&mut self.lockings, "locking cases", table.rows, |row| &row.key)?;
                add(&mut self.retaining_metals, "retained metals", table.metals, |row| &row.material)
            }
            path => Err(DataError::UnknownFile { file: path.to_owned() }),
        }
    }
}

fn rows<T: DeserializeOwned>(file: &DataFile<'_>) -> Result<T, DataError> {
    toml::from_str(file.text).map_err(|error| DataError::Unreadable { file: file.path.to_owned(), message: error.to_string() })
}

fn add<T>(table: &mut IndexMap<String, T>, name: &'static str, rows: Vec<T>, key: fn(&T) -> &String) -> Result<(), DataError> {
    for row in rows {
        let key = key(&row).clone();
        if table.contains_key(&key) {
            return Err(DataError::Twice { table: name, key });
        }
        table.insert(key, row);
    }
    Ok(())
}
