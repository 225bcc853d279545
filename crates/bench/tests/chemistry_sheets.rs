//! Worked cases of coats, baths, quenches and solutions from outside, each through the sheet a person would use. The source stands
//! beside each.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use bench::{AnswerRow, ChoiceRow, Page, read, sheet};
use common::page;
use reference::Reference;
use units::System;

fn answer<'a>(page: &'a Page, words: &str) -> &'a AnswerRow {
    let exact = page.answers.iter().find(|answer| answer.name == words);
    exact
        .or_else(|| page.answers.iter().find(|answer| answer.name.contains(words)))
        .unwrap_or_else(|| panic!("no `{words}` among {:?}", page.answers))
}

/// An answer in the unit that the test expects it in.
fn near(page: &Page, words: &str, unit: &str, expected: f64, by: f64) {
    let row = answer(page, words);
    assert_eq!(row.unit, unit, "{row:?}");
    assert!((row.likely - expected).abs() <= by, "{words} is {} {unit}, not {expected}", row.likely);
}

fn way<'a>(page: &'a Page, words: &str) -> &'a ChoiceRow {
    let known = |row: &&ChoiceRow| row.key == words || row.name.contains(words);
    page.choices.iter().find(known).unwrap_or_else(|| panic!("no `{words}` among {:?}", page.choices))
}

fn minds(page: &Page, words: &str) -> bool {
    page.cautions.iter().any(|caution| caution.text.contains(words))
}

/// Why a sheet refuses.
fn refused(name: &str, given: &[(&str, &str)]) -> String {
    let (sheet, reference) = (sheet(name).unwrap(), Reference::embedded());
    match read(sheet, given, reference) {
        Err(refusals) => refusals.into_iter().map(|refusal| format!("{}. {}", refusal.what, refusal.mend)).collect(),
        Ok(reply) => match sheet.work(&reply, reference, System::Metric) {
            Err(error) => error.to_string(),
            Ok(page) => panic!("{name} {given:?} is answered: {:?}", page.answers),
        },
    }
}

#[test]
fn coats_on_fits_and_threads() {
    // Geometry: 5 µm add 10 µm to a shaft, take 10 from a bore, and move a 60° thread's pitch diameter by 20.
    let coat = |face: &'static str| page("coating", &[("finish", "paint"), ("thickness", "5 um"), ("face", face), ("tolerance", "0.1 mm")]);
    for (face, expected) in [("shaft", 10.0), ("bore", -10.0), ("screw", 20.0), ("nut", -20.0)] {
        near(&coat(face), "diameter", "mm", expected / 1000.0, 1e-9);
    }
    // Common practice, no source: a coat may take a fifth of a tolerance; 20 µm of 100 are just that, 20 of 90 more.
    assert!(way(&coat("screw"), "coating it with").fits);
    let tight = page("coating", &[("finish", "paint"), ("thickness", "5 um"), ("face", "screw"), ("tolerance", "0.09 mm")]);
    assert!(!way(&tight, "coating it with").fits);
    // Common practice, from memory: half of a coat that is grown replaces metal.
    let grown = page("coating", &[("thickness", "2 um")]);
    let grows = answer(&grown, "diameter");
    assert!((grows.low - 0.002).abs() < 1e-9 && (grows.high - 0.004).abs() < 1e-9, "{grows:?}");
    // Geometry: the thickest and the thinnest coat move the diameter by twice as much.
    let ranged = page("coating", &[("finish", "paint")]);
    let (thick, change) = (answer(&ranged, "thickness"), answer(&ranged, "diameter"));
    assert!((change.high - 2.0 * thick.high).abs() < 1e-9 && (change.low - 2.0 * thick.low).abs() < 1e-9, "{thick:?} {change:?}");
    // Trade fact (common practice, no source): wax and paint are too thick for a fit of H7, oil for one of 0.1 mm is not.
    assert!(
        !minds(&grown, "no work for a home shop") && minds(&page("coating", &[("finish", "hot-blackening")]), "no work for a home shop")
    );
    assert!(page("coating", &[]).choices.iter().all(|row| row.key != "enamel" || !row.fits));
    assert!(way(&coat("shaft"), "rust-oil").fits);
}

#[test]
fn oil_that_drains() {
    // Jeffreys 1930, by hand: √(22·10⁻⁶·0.3/(9.80665·86400)) is 2.79 µm, its mean two thirds of that.
    let oiled = page("coating", &[("viscosity", "22 mm2/s")]);
    near(&oiled, "lower edge", "µm", 2.79, 0.01);
    near(&oiled, "whole face", "µm", 1.86, 0.01);
    let film = |after: &str| answer(&page("coating", &[("after", after)]), "whole face").likely;
    assert!(film("1 day") > film("7 day"));
}

#[test]
fn what_an_area_takes() {
    // Geometry, by hand: π·50·100 + π·50²/2 = 19635 mm².
    let bar = page("coverage", &[("shape", "cylinder"), ("diameter", "50 mm"), ("length", "100 mm")]);
    near(&bar, "area", "cm²", 196.35, 0.1);
    // By hand: a tube of 50/20 × 100 mm has π·70·100 + π·(2500 − 400)/2 = 25290 mm²; a ball of 50 mm π·2500 = 7854 mm².
    near(&page("coverage", &[("shape", "tube")]), "area", "cm²", 252.90, 0.1);
    near(&page("coverage", &[("shape", "ball")]), "area", "cm²", 78.54, 0.05);
    // By hand: a plate of 1 kg, 3 mm thick, of 7.85 g/cm³ has 2·10⁶/(7.85·3) = 84926 mm².
    near(&page("coverage", &[("shape", "plate"), ("mass", "1 kg")]), "area", "cm²", 849.26, 0.5);
    // By hand: 25 µm of a wax with 30 % solids from a spray can (0.6 lands) take 25/0.3/0.6 = 139 mL/m².
    let own = page("coverage", &[("area", "1 m2"), ("dry", "25 um"), ("solids", "30 %"), ("how", "aerosol")]);
    near(&own, "your own product", "mL", 138.9, 0.1);
    // Trade facts (common practice, no source): oil only on sliding faces, wax for a winter, no acid black on springs.
    let sliding = page("coverage", &[("part", "sliding-or-measuring-face")]);
    assert!(way(&sliding, "rust-oil").fits && sliding.choices.iter().all(|row| !row.key.contains("wax") || !row.fits));
    assert!(sliding.choices.iter().any(|row| row.key.contains("wax") && row.why.contains("never")), "{:?}", sliding.choices);
    assert_eq!(page("coverage", &[]).choices[0].key, "soft-wax");
    let spring = page("coverage", &[("part", "hard-spring-steel"), ("material", "hardened-steel")]);
    assert!(way(&spring, "rust-oil").fits && spring.choices.iter().all(|row| !row.key.contains("black") || !row.fits));
    // More parts and more coats take more (law).
    let takes = |pieces: &str| answer(&page("coverage", &[("pieces", pieces)]), "solvent").likely;
    assert!((takes("3") / takes("1") - 3.0).abs() < 1e-9);
}

#[test]
fn baths() {
    // Archimedes, by hand: 300 × 200 mm, a part of 1.5 kg steel 60 mm high: 95 mm deep, 5.51 L, rise 3.2 mm.
    let dip = page("bath", &[("stands", "60 mm"), ("mass", "1.5 kg"), ("work", "other")]);
    near(&dip, "depth", "mm", 95.0, 1e-6);
    near(&dip, "liquid", "L", 5.51, 0.01);
    near(&dip, "rise", "mm", 3.185, 0.01);
    // By hand: 100 × 60 × 40 mm stands best on its end, in 80 × 60 mm with 10 mm all round.
    near(&page("bath", &[]), "smallest tank", "cm²", 48.0, 1e-6);
    // Stoichiometry of CuSe, computed independently: a litre with 2.5 g/L of selenium blackens 0.75 m² at 1 µm.
    let black = page("bath", &[]);
    let litres = answer(&black, "liquid").likely;
    near(&black, "blackens before", "m²", 0.75 * litres, 0.01 * litres);
    // By hand: 15 % of the liquid and a tenth.
    near(&black, "to buy", "L", 0.15 * 1.1 * litres, 0.001);
    // Trade fact (common practice, no source): acid black does not go on brass, and never makes it on hard steel.
    for metal in ["brass", "aluminium", "stainless"] {
        assert!(refused("bath", &[("material", metal)]).contains("chemistry of its own"), "{metal}");
    }
    assert!(!way(&page("bath", &[("material", "hardened-steel")]), "cold-blackening").fits);
    assert!(refused("bath", &[("rim", "150 mm")]).contains("30 mm below the rim"));
    assert!(refused("bath", &[("tank", "round"), ("tank_diameter", "90 mm")]).contains("does not go into"));
    assert!(refused("bath", &[("fluid", "hot-alkaline-black")]).contains("caustic"));
}

#[test]
fn quenches() {
    // Computed independently from the Shomate equations: a pound of iron from 850 °C in a US gallon of oil at 40 °C ends at 76.6 °C.
    let gallon = page("quench", &[("mass", "0.454 kg"), ("have", "3.785 L"), ("start", "40 °C")]);
    near(&gallon, "hottest", "°C", 76.6, 3.0);
    // Common practice, no source: a US gallon for a pound.
    near(&gallon, "trade's rule", "L", 3.785, 0.03);
    // The same for 0.5 kg from 820 °C in 2 L at 25 °C: 97 °C, and too little.
    let small = page("quench", &[("mass", "0.5 kg"), ("hot", "820 °C"), ("have", "2 L"), ("start", "25 °C")]);
    near(&small, "hottest", "°C", 97.0, 4.0);
    assert!(!way(&small, "quenching in").fits);
    // Common practice, no source: refused within 50 K of the flash point; used engine oil never.
    assert!(refused("quench", &[("mass", "0.5 kg"), ("have", "1 L")]).contains("flash point"));
    assert!(refused("quench", &[("fluid", "acetone")]).contains("no oil"));
    assert!(minds(&gallon, "used engine oil") && minds(&gallon, "lid"));
    // Trade facts (common practice, no source): water cracks oil-hardening steel; brine is for the water-hardening.
    assert!(!way(&gallon, "cold-water").fits && way(&gallon, "quench-oil").fits);
    let brine = page("quench", &[("steel", "water-hardening")]);
    assert_eq!(brine.choices.iter().find(|row| !row.key.is_empty()).unwrap().key, "quench-salt");
    // By hand: water takes 0.998·4.18 kJ/(L·K), oil 1.74: by heat, oil takes 2.4 times the volume, less what ends warmer.
    let [oil, water] = [("oil", "by the heat"), ("water", "water needed")]
        .map(|(liquid, words)| answer(&page("quench", &[("mass", "1 kg"), ("rise", "15 K"), ("liquid", liquid)]), words).likely);
    assert!((oil / water - 0.998 * 4.18 / 1.74).abs() < 0.01, "{oil} {water}");
    // Common practice, no source: water ends at 35 °C at most, brine at 45 °C, whatever rise oil may take. By hand, a kilogram from 850 °C:
    // (555 − 5)/(0.998·4.18·15) = 8.8 L of water, (555 − 9)/(1.07·3.6·25) = 5.7 L of brine.
    let by = |liquid: &str| page("quench", &[("mass", "1 kg"), ("liquid", liquid)]);
    near(&by("water"), "water needed", "L", 8.8, 0.2);
    near(&by("water"), "hottest", "°C", 35.0, 0.1);
    near(&by("brine"), "brine needed", "L", 5.7, 0.2);
    near(&by("brine"), "hottest", "°C", 45.0, 0.1);
    assert!(!way(&page("quench", &[("mass", "1 kg"), ("liquid", "water"), ("have", "5 L")]), "quenching in").fits);
    assert!(refused("quench", &[("liquid", "water"), ("start", "33 °C")]).contains("between 0 and 30 °C"));
}

#[test]
fn pickles() {
    // Mass balance with a density from memory: a litre of 10 % bisulfate weighs 1.08 kg: 108 g of salt, 968 g of water.
    let salt = page("pickle", &[]);
    near(&salt, "to weigh", "g", 108.0, 1.0);
    near(&salt, "water", "g", 968.0, 5.0);
    // CRC Handbook constants, computed independently: pH 1.0 and 1.7 at 10 %.
    near(&salt, "pH", "", 1.0, 0.05);
    near(&page("pickle", &[("acid", "citric")]), "pH", "", 1.7, 0.05);
    // Stoichiometry of CuO, computed independently: 28, 34 and 69 g/L; retired at 30 % (common practice).
    for (acid, copper) in [("bisulfate", 28.0), ("citric", 34.0), ("sulfuric", 69.0)] {
        let bath = page("pickle", &[("acid", acid)]);
        near(&bath, "can dissolve", "g/L", copper, 0.6);
        near(&bath, "retire", "g/L", 0.3 * copper, 0.2);
    }
    // By hand: 200 cm² of black oxide, 5 µm thick: 6.31·0.1·63.546/79.545 = 0.504 g; 8.6 g/L retire a litre after 16 times.
    near(&salt, "copper each time", "g", 0.504, 0.001);
    near(&salt, "times it serves", "", 16.0, 1.0);
    // Trade facts (common practice, no source).
    for (metal, why) in [("mild-steel", "plates"), ("hardened-steel", "brittle"), ("aluminium", "hydrogen"), ("nylon", "no oxide")] {
        assert!(refused("pickle", &[("metals", metal)]).contains(why), "{metal}");
    }
    assert!(minds(&salt, "not even tweezers") && minds(&salt, "flux washed off"));
    assert!(minds(&salt, "Goggles") && minds(&salt, "never for the drain"));
}

#[test]
fn neutralising() {
    // Stoichiometry, computed independently: 100 g of bisulfate take 70.0 g and give 20.0 L at 20 °C; citric 131 g and 37.6 L;
    // sulfuric acid 171 g and 49 L.
    for (acid, soda, gas) in [("bisulfate", 70.0, 20.0), ("citric", 131.0, 37.6), ("sulfuric", 171.0, 49.0)] {
        let end = page("neutralise", &[("acid", acid), ("pure", "100 g")]);
        near(&end, "sodium bicarbonate", "g", soda, 0.01 * soda);
        near(&end, "carbon dioxide", "L", gas, 0.01 * gas);
    }
    // By hand: 131 g in additions of 10 g are 14; each gives 10/84.007·24.055 = 2.86 L; a litre wants a vessel of three.
    let citric = page("neutralise", &[("acid", "citric"), ("pure", "100 g")]);
    near(&citric, "additions", "", 14.0, 1e-9);
    near(&citric, "gas of each", "L", 2.863, 0.005);
    near(&citric, "vessel", "L", 3.0, 1e-9);
    // A pickle is ended by what it was made of (law): the sheet of the recipe and this one agree.
    let made = answer(&page("pickle", &[]), "to weigh").likely;
    near(&page("neutralise", &[]), "pure sodium bisulfate", "g", made, 0.01);
    assert!(
        !way(&citric, "pour it away").fits && way(&citric, "hazardous waste").fits && minds(&citric, "Neutral is not fit for the drain")
    );
}

#[test]
fn diluting() {
    // By hand: 1:10 is 9.09 % where the parts are mixed, 10 % where it means one in ten.
    let parts = page("dilute", &[("parts", "10")]);
    let share = answer(&parts, "share");
    assert!((share.likely - 9.0909).abs() < 0.01 && (share.high - 10.0).abs() < 1e-6, "{share:?}");
    near(&parts, "concentrate", "mL", 90.9, 0.1);
    near(&page("dilute", &[("what", "salt"), ("share", "10 %")]), "salt", "g", 100.0, 1e-6);
    // Computed independently from NBS Circular 500: a litre of 10 % from battery acid: 288 g into 778 g, 1.8 K warmer.
    let acid = page("dilute", &[("what", "sulfuric"), ("share", "10 %")]);
    near(&acid, "acid", "g", 288.0, 1.0);
    near(&acid, "water", "g", 778.0, 1.0);
    near(&acid, "warmer", "K", 1.8, 1.0);
    assert!(minds(&acid, "acid into cold water"));
    // The same: 96 % to 37 % gets 74 K warmer, which passes 60 °C and is refused; to 10 % it gets 17.5 K warmer.
    let strong = [("what", "sulfuric"), ("from", "96 %"), ("volume", "1 L")];
    assert!(refused("dilute", &[strong[0], strong[1], strong[2], ("share", "37 %")]).contains("60 °C"));
    near(&page("dilute", &[strong[0], strong[1], strong[2], ("share", "10 %")]), "warmer", "K", 17.5, 1.0);
    // School calorimeters, from memory: a mol (40 g) of caustic soda in a kilogram of water makes it some 10 K warmer.
    let lye = page("dilute", &[("what", "caustic"), ("share", "3.846 %")]);
    near(&lye, "warmer", "K", 10.0, 0.7);
    near(&lye, "portions", "", 1.0, 1e-9);
    // By hand: two litres of a mix of 15 % take 300 mL. A dry salt is weighed, an acid is thinned by its own rules.
    near(&page("dilute", &[("fluid", "cold-blackening"), ("volume", "2 L")]), "concentrate", "mL", 300.0, 1e-6);
    assert!(refused("dilute", &[("fluid", "pickle-citric")]).contains("weighed"));
    assert!(refused("dilute", &[("fluid", "battery-acid")]).contains("sulfuric"));
}
