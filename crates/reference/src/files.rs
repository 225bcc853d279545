//! The data files, compiled in.

/// One data file: its path under `data/` and its text.
#[derive(Debug, Clone, Copy)]
pub struct DataFile<'a> {
    /// Path under `data/`; it says which table the file holds.
    pub path: &'a str,
    /// The TOML text.
    pub text: &'a str,
}

macro_rules! embed {
    ($($path:literal),+ $(,)?) => {
        &[$(DataFile { path: $path, text: include_str!(concat!("../data/", $path)) }),+]
    };
}

/// The data compiled into the program. The order of the fluid files is the order in which ties between fluids are broken.
pub const FILES: &[DataFile<'static>] = embed![
    "sources.toml",
    "classes.toml",
    "materials.toml",
    "bearing_materials.toml",
    "thickeners.toml",
    "storage.toml",
    "statements.toml",
    "currencies.toml",
    "climates.toml",
    "waste.toml",
    "rags.toml",
    "quantities.toml",
    "synonyms.toml",
    "consequences.toml",
    "frequencies.toml",
    "substances/solvents.toml",
    "substances/acids-and-salts.toml",
    "substances/gases-and-fumes.toml",
    "substances/oils-and-solids.toml",
    "substances/adhesives.toml",
    "fluids/oils.toml",
    "fluids/greases.toml",
    "fluids/dry.toml",
    "fluids/cutting.toml",
    "fluids/adhesives.toml",
    "fluids/sealants.toml",
    "fluids/finishes.toml",
    "fluids/marking.toml",
    "fluids/cleaners.toml",
    "fluids/soldering.toml",
    "fluids/hardening.toml",
    "practices/cutting.toml",
    "practices/cleaning.toml",
    "practices/finishing.toml",
    "practices/sealing.toml",
    "practices/locking.toml",
    "templates/bench-lathe.toml",
    "templates/centre-lathe.toml",
    "templates/plain-bearing-lathe.toml",
    "templates/watchmaker-lathe.toml",
    "templates/bench-mill.toml",
    "templates/knee-mill.toml",
    "templates/cnc-mill.toml",
    "templates/drill-press.toml",
    "templates/bench-grinder.toml",
    "templates/surface-grinder.toml",
    "templates/tool-and-cutter-grinder.toml",
    "templates/horizontal-bandsaw.toml",
    "templates/vertical-bandsaw.toml",
    "templates/shaper.toml",
    "templates/dividing-head.toml",
    "templates/rotary-table.toml",
    "templates/bench-vice.toml",
    "templates/arbor-press.toml",
    "templates/model-steam-engine.toml",
    "templates/air-compressor.toml",
    "templates/air-tools.toml",
    "templates/measuring-tools.toml",
    "templates/shop-furniture.toml",
];
