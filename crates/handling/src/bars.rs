//! What is never recommended, whatever else speaks for it. Nothing a user can say switches one of these off.

use reference::{Fluid, Trait};

/// A refusal.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bar {
    /// What is barred, in a few words.
    pub what: &'static str,
    /// Why, and what to do instead.
    pub why: &'static str,
    /// Bibliography key.
    pub source: &'static str,
}

macro_rules! bars {
    ($($(#[doc = $doc:literal])+ $name:ident = $what:literal, $why:literal, $source:literal;)+) => {
        $($(#[doc = $doc])+ pub const $name: Bar = Bar { what: $what, why: $why, source: $source };)+
        /// All of them.
        pub const ALL: &[Bar] = &[$($name),+];
    };
}

bars! {
    /// Chlorinated solvent and heat.
    CHLORINATED_HEAT = "chlorinated solvent near heat",
        "its vapour turns to phosgene at an arc, a flame, a grinder, glowing metal or a cigarette, and on a part that is welded or brazed \
         later: use another cleaner",
        "29-cfr-1910-252";
    /// Chlorinated degreasers at all.
    CHLORINATED = "a chlorinated degreaser",
        "it harms the liver and may cause cancer, and the law takes it from consumers: hand in what you have and use another cleaner",
        "40-cfr-751";
    /// Caustic on light metals.
    CAUSTIC_LIGHT_METAL = "caustic on aluminium, zinc or magnesium",
        "it eats the metal and gives off hydrogen that burns: 10 g of aluminium make 13 L of it; use a neutral cleaner",
        "common-practice";
    /// Bleach with acid, ammonia or solvent.
    BLEACH = "bleach with acid, ammonia or solvent",
        "they give off chlorine and other poison gases: keep bleach out of the workshop",
        "epa-600-2-80-076";
    /// Hydrochloric acid indoors.
    HYDROCHLORIC = "a hydrochloric pickle where machines stand",
        "its vapour rusts every bright face in the room: use citric acid or bisulfate",
        "common-practice";
    /// Petrol as a solvent.
    PETROL = "petrol as a solvent",
        "its vapour catches fire at −40 °C and its benzene causes cancer: use dearomatised solvent",
        "niosh-pocket-guide";
    /// Oil and oxygen.
    OXYGEN = "oil or grease near oxygen",
        "they burn and explode together: only what is rated for oxygen, by those trained for it",
        "astm-g63";
    /// Steel in a copper-bearing pickle.
    STEEL_IN_PICKLE = "steel in a pickle that has held copper or brass",
        "iron drives the copper out of it and every part comes out plated: tweezers of plastic, brass or wood, and a bath for steel alone",
        "common-practice";
    /// The order of acid and water.
    ACID_ORDER = "water poured into acid",
        "it boils where it lands and throws acid out: acid into cold water, in a thin stream, stirred",
        "common-practice";
    /// Combustion heaters.
    COMBUSTION = "an unflued flame to dry a room",
        "a kilogram of propane makes 1.6 kg of water and a flame without a flue makes carbon monoxide: electric heat under a cover, or a \
         dehumidifier",
        "common-practice";
    /// Used engine oil.
    USED_OIL = "used engine oil, to quench or for anything on the skin",
        "it causes cancer of the skin, and its fuel and water make a bath catch fire: fresh quench oil",
        "iarc-33";
    /// Cadmium filler.
    CADMIUM = "a silver solder with cadmium",
        "its fume kills: 1 mg in a garage is six times what is allowed; take a filler without it",
        "niosh-pocket-guide";
    /// Acid on hard steel.
    ACID_ON_HARD = "an acid pickle on hard or spring steel",
        "hydrogen makes it brittle and it cracks under load: clean it by hand",
        "mil-dtl-16232";
    /// A flame to find a leak.
    FLAME_LEAK = "a flame to look for a leak",
        "what leaks may burn: soapy water",
        "en-14291";
}

/// What surrounds a fluid where it is used.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Beside {
    /// An arc, a flame, a grinder or glowing metal is near, or the part meets it later.
    pub heat: bool,
    /// The part is hot enough to light a vapour when the fluid goes on.
    pub hot_part: bool,
    /// Oxygen fittings.
    pub oxygen: bool,
    /// Light metals or zinc.
    pub light_metal: bool,
    /// Hard or spring steel.
    pub hard_steel: bool,
    /// Painting or bonding follows.
    pub coating: bool,
}

/// The bar that speaks against a fluid there, if one does: always harm.
#[must_use]
pub fn bar(fluid: &Fluid, beside: Beside) -> Option<&'static Bar> {
    let has = |wanted: Trait| fluid.traits.contains(&wanted);
    let holds = |keys: &[&str]| fluid.contents.iter().any(|content| keys.contains(&content.substance.as_str()));
    let chlorinated = has(Trait::Chlorinated) || holds(&["tetrachloroethylene", "trichloroethylene", "dichloromethane"]);
    let oil = fluid.oil.is_some() || fluid.grease.is_some() || holds(&["mineral-oil", "light-mineral-oil", "petrolatum"]);
    // The program's own rules hold whatever the data's `barred` says, and the data's whatever these say.
    let rules: [(bool, &'static Bar); 9] = [
        (chlorinated && beside.heat, &CHLORINATED_HEAT),
        (chlorinated && has(Trait::Solvent) || fluid.is("chlorinated-cleaner"), &CHLORINATED),
        (has(Trait::Caustic) && beside.light_metal, &CAUSTIC_LIGHT_METAL),
        (fluid.is("petrol"), &PETROL),
        (fluid.is("used-engine-oil"), &USED_OIL),
        (oil && beside.oxygen, &OXYGEN),
        (holds(&["hydrochloric-acid"]), &HYDROCHLORIC),
        (has(Trait::Cadmium), &CADMIUM),
        (has(Trait::Acid) && beside.hard_steel, &ACID_ON_HARD),
    ];
    rules.into_iter().find_map(|(holds, bar)| holds.then_some(bar))
}
