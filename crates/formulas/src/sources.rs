//! Where the formulas come from: keys into the bibliography.

use std::fmt;

/// The key of an entry in the bibliography.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Source(pub &'static str);

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }
}

macro_rules! sources {
    ($($(#[doc = $words:literal])+ $name:ident = $key:literal;)+) => {
        $($(#[doc = $words])+ pub const $name: Source = Source($key);)+
        /// Every source a formula names; the bibliography has an entry for each.
        pub const ALL: &[Source] = &[$($name),+];
    };
}

sources! {
    /// A definition, or plain geometry or mechanics that needs no source.
    DEFINITION = "definition";
    /// The trade does so; no source.
    COMMON_PRACTICE = "common-practice";
    /// ASTM D341, viscosity–temperature equations and charts for liquid petroleum or hydrocarbon products.
    ASTM_D341 = "astm-d341";
    /// ASTM D2161, converting kinematic viscosity to Saybolt Universal and Saybolt Furol viscosity.
    ASTM_D2161 = "astm-d2161";
    /// ASTM D217, cone penetration of lubricating grease: what the NLGI numbers are measured by.
    ASTM_D217 = "astm-d217";
    /// ANSI/AGMA 9005, industrial gear lubrication.
    AGMA_9005 = "agma-9005";
    /// ASTM D2270, calculating viscosity index from kinematic viscosity at 40 °C and 100 °C.
    ASTM_D2270 = "astm-d2270";
    /// ASTM D7152, calculating viscosity of a blend of petroleum products.
    ASTM_D7152 = "astm-d7152";
    /// ISO 3448, industrial liquid lubricants: ISO viscosity classification.
    ISO_3448 = "iso-3448";
    /// SAE J300, engine oil viscosity classification.
    SAE_J300 = "sae-j300";
    /// SAE J306, automotive gear lubricant viscosity classification.
    SAE_J306 = "sae-j306";
    /// ISO 281, rolling bearings: dynamic load ratings and rating life.
    ISO_281 = "iso-281";
    /// *The Tribology Handbook*, sections A20 (grease life) and C8 (choice of viscosity).
    TRIBOLOGY_HANDBOOK = "tribology-handbook";
    /// DIN 51509-1, selection of lubricants for gears.
    DIN_51509 = "din-51509";
    /// *ASM Handbook*, volume 18, friction, lubrication and wear technology.
    ASM_HANDBOOK_18 = "asm-handbook-18";
    /// Petroff's equation for the friction of a lightly loaded journal.
    PETROFF = "petroff-1883";
    /// Raimondi and Boyd's solutions of Reynolds' equation for the finite journal bearing, 1958.
    RAIMONDI_BOYD = "raimondi-boyd-1958";
    /// Trumpler's criteria for the design of film bearings, 1966.
    TRUMPLER = "trumpler-1966";
    /// Mott, *Machine Elements in Mechanical Design*, pressure–velocity factors of bearing materials.
    MOTT = "mott-machine-elements";
    /// Jeffreys, the draining of a vertical plate, 1930.
    JEFFREYS = "jeffreys-1930";
    /// A trade sheet's dose for slides, bearings and screws: a film of 25 µm for every running hour.
    LUBRICANT_DOSE = "lubricant-dose-sheet";
    /// A compressor text's feed of cylinder oil: one drop for every 600 square feet swept.
    CYLINDER_FEED = "cylinder-feed-rule";
    /// IAPWS Industrial Formulation 1997 for water and steam.
    IAPWS_IF97 = "iapws-if97";
    /// *Machinery's Handbook*, 31st edition: machining power, drilling.
    MACHINERYS_HANDBOOK = "machinerys-handbook-31";
    /// A technical sheet's tapping torque from the specific cutting force.
    TAPPING_TORQUE = "tapping-torque-sheet";
    /// NIOSH publication 98-102, occupational exposure to metalworking fluids.
    NIOSH_98_102 = "niosh-98-102";
    /// ASHRAE's equation for evaporation from open water.
    ASHRAE_POOL = "ashrae-pool-evaporation";
    /// Hamrock and Dowson's film thickness of elliptical contacts, 1977, and the line contact of Dowson and Higginson.
    HAMROCK_DOWSON = "hamrock-dowson-1977";
    /// AGMA 925, effect of lubrication on gear surface distress.
    AGMA_925 = "agma-925";
    /// ISO 286-1, geometrical product specifications: ISO code system for tolerances on linear sizes.
    ISO_286 = "iso-286-1";
    /// JCGM 100, guide to the expression of uncertainty in measurement.
    UNCERTAINTY = "jcgm-100";
    /// The thick cylinders of Lamé, 1852, as textbooks of machine design give them.
    LAME = "lame-1852";
    /// DIN 7190-1, interference fits: calculation and design rules for cylindrical press fits.
    DIN_7190 = "din-7190";
    /// ISO 724, ISO general-purpose metric screw threads: basic dimensions.
    ISO_724 = "iso-724";
    /// ISO 965-1, ISO general-purpose metric screw threads: tolerances.
    ISO_965 = "iso-965-1";
    /// ISO 898-1, mechanical properties of fasteners: bolts, screws and studs.
    ISO_898_1 = "iso-898-1";
    /// ISO 898-7, mechanical properties of fasteners: torsional test and minimum torques.
    ISO_898_7 = "iso-898-7";
    /// ASME B1.1, unified inch screw threads.
    ASME_B1_1 = "asme-b1-1";
    /// BS 84, parallel screw threads of Whitworth form.
    BS_84 = "bs-84";
    /// BS 93, British Association screw threads.
    BS_93 = "bs-93";
    /// VDI 2230-1, systematic calculation of highly stressed bolted joints.
    VDI_2230 = "vdi-2230-1";
    /// ISO 16047, fasteners: torque and clamp force testing.
    ISO_16047 = "iso-16047";
    /// Shigley's *Mechanical Engineering Design*.
    SHIGLEY = "shigley";
    /// SAE J429, mechanical and material requirements for externally threaded fasteners.
    SAE_J429 = "sae-j429";
    /// ISO 3506-1, corrosion-resistant stainless steel fasteners.
    ISO_3506 = "iso-3506-1";
    /// ISO 10964, torque strength of anaerobic adhesives on threads.
    ISO_10964 = "iso-10964";
    /// Typical values of a class of product, from memory of many data sheets.
    TYPICAL = "typical-from-memory";
    /// ASTM D1002 and ISO 4587, lap-shear strength of adhesives.
    ASTM_D1002 = "astm-d1002";
    /// Volkersen's shear lag of lap joints, 1938.
    VOLKERSEN = "volkersen-1938";
    /// ISO 296, machine tools: self-holding tapers for tool shanks.
    ISO_296 = "iso-296";
    /// ASME B1.20.1, pipe threads, general purpose.
    ASME_B1_20_1 = "asme-b1-20-1";
    /// Standard atomic weights, as IUPAC publishes them.
    ATOMIC_WEIGHTS = "atomic-weights";
    /// Heats of solution of National Bureau of Standards Circular 500, 1952, as chemical engineers' textbooks reprint them.
    NBS_500 = "nbs-circular-500";
    /// *CRC Handbook of Chemistry and Physics*: densities, dissociation constants.
    CRC_HANDBOOK = "crc-handbook";
    /// *Perry's Chemical Engineers' Handbook*: specific heats of solutions.
    PERRY = "perry";
    /// *NIST Chemistry WebBook*: Shomate equations, after the JANAF thermochemical tables.
    NIST_WEBBOOK = "nist-webbook";
    /// *Fundamentals of Heat and Mass Transfer*: lumped bodies.
    INCROPERA = "incropera";
    /// Poisson's distribution of events that come at random.
    POISSON = "poisson";
    /// Croston, forecasting and stock control for intermittent demands, 1972.
    CROSTON = "croston-1972";
    /// Syntetos and Boylan, the accuracy of intermittent demand estimates, 2005.
    SYNTETOS_BOYLAN = "syntetos-boylan-2005";
    /// 40 CFR 264.175, containment of containers of hazardous waste.
    CFR_264_175 = "40-cfr-264-175";
    /// Antoine's equation of vapour pressure, 1888.
    ANTOINE = "antoine-1888";
    /// Clausius' equation of vapour pressure, 1850.
    CLAUSIUS = "clausius-1850";
    /// Fuller, Schettler and Giddings, diffusion of gases in pairs, 1966.
    FULLER = "fuller-1966";
    /// Mackay and Matsugu, evaporation of liquid spills, 1973.
    MACKAY_MATSUGU = "mackay-matsugu-1973";
    /// EPA 550-B-99-009, guidance for offsite consequence analysis: evaporation of pools.
    EPA_POOLS = "epa-550-b-99-009";
    /// Law of ideal gases with the exact gas constant.
    IDEAL_GAS = "ideal-gas";
    /// Mass balance of a well-mixed room.
    ROOM_BALANCE = "room-balance";
    /// Two-zone model of a room with a near field round the source.
    NEAR_FIELD = "two-zone-model";
    /// ACGIH, *Industrial Ventilation: A Manual of Recommended Practice*.
    ACGIH_VENTILATION = "acgih-ventilation";
    /// Le Chatelier's rule for flammable limits of mixtures, 1891.
    LE_CHATELIER = "le-chatelier-1891";
    /// Zabetakis, flammability characteristics of combustible gases and vapors, 1965.
    ZABETAKIS = "zabetakis-1965";
    /// ASTM D93, flash point by Pensky–Martens closed cup tester.
    ASTM_D93 = "astm-d93";
    /// WMO No. 8, *Guide to Instruments and Methods of Observation*.
    WMO_8 = "wmo-8";
    /// *ASHRAE Handbook, Fundamentals*, chapter 1, psychrometrics.
    ASHRAE_FUNDAMENTALS = "ashrae-fundamentals";
    /// ISO 9223, corrosivity of atmospheres: classification, determination and estimation.
    ISO_9223 = "iso-9223";
    /// ISO 9224, corrosivity of atmospheres: guiding values for the corrosivity categories.
    ISO_9224 = "iso-9224";
    /// ISO 11844-1, corrosion of metals in indoor atmospheres of low corrosivity.
    ISO_11844 = "iso-11844-1";
}
