//! Labels against the published rules: worked cases, every cut-off just below, at and just above, and what outranks what.

use reference::hazard::{Classified, HazardClass};
use reference::{DataFile, Reference, Trait};
use units::{KinematicViscosity, Range, Temperature, parse};

use handling::label::{
    Finding, Label, Mixture, Part, Pictogram, Rules, Signal, classify, of_dilution, of_fluid, of_mixture, pictograms, prune, signal,
};

fn mixture<'a>(reference: &'a Reference, parts: &[(&str, f64)]) -> Mixture<'a> {
    let part = |(key, percent): &(&str, f64)| Part {
        substance: reference.substance(key).expect("the data have the substance"),
        share: Range::exact(percent / 100.0),
    };
    Mixture::new(parts.iter().map(part).collect())
}

fn codes(label: &Label) -> Vec<&str> {
    label.hazards.iter().map(|line| line.code.as_str()).collect()
}

fn signs(label: &Label) -> Vec<&str> {
    label.pictograms.iter().map(|pictogram| pictogram.code()).collect()
}

/// What one set of rules says, once what another statement says is left out.
fn statements(findings: &[Finding], rules: Rules) -> Vec<String> {
    let of_rules = findings.iter().filter(|finding| finding.rules == Some(rules));
    let hazards = of_rules.map(|finding| Classified { class: finding.class, statement: finding.statement.clone() }).collect();
    let mut codes: Vec<_> = prune(hazards).into_iter().map(|hazard| hazard.statement).collect();
    codes.sort_unstable();
    codes
}

#[test]
fn acetone_and_isopropanol_half_and_half() {
    // UN GHS, parts 2 and 3: flash point below 23 °C, sum of eye irritants 100 %, sum of narcotics 100 %.
    let label = of_mixture("wipe", &mixture(Reference::embedded(), &[("acetone", 50.0), ("isopropanol", 50.0)]), Reference::embedded());
    let hazards: Vec<_> = codes(&label).into_iter().filter(|code| code.starts_with('H')).collect();
    assert_eq!(hazards, ["H225", "H319", "H336"]);
    assert_eq!(signs(&label), ["GHS02", "GHS07"]);
    assert_eq!(label.signal, Some(Signal::Danger));
}

#[test]
fn tenth_sulfuric_acid_irritates_by_the_european_limit_and_burns_by_the_sum() {
    // Regulation (EC) No 1272/2008, Annex VI: 5 to 15 % irritates. UN GHS, table 3.2.3: from 5 % it burns. Both from memory.
    let acid = mixture(Reference::embedded(), &[("sulfuric-acid", 10.0)]);
    let findings = classify(&acid);
    assert_eq!(statements(&findings, Rules::Clp), ["H315", "H319"]);
    assert_eq!(statements(&findings, Rules::UnGhs), ["H314"]);
    let label = of_mixture("pickle", &acid, Reference::embedded());
    assert_eq!(codes(&label), ["H314"]);
    assert_eq!(signs(&label), ["GHS05"]);
    assert_eq!(label.signal, Some(Signal::Danger));
    assert!(label.notes.iter().any(|note| note.contains("H315 by CLP")), "{:?}", label.notes);
}

#[test]
fn selenious_acid_swallowed() {
    // UN GHS 3.1.3.6: with the converted point 100 mg/kg, 3 % come to 3333 mg/kg, 5 % to 2000, 10 % to 1000 (worked by hand).
    let swallowed = |percent| {
        let findings = classify(&mixture(Reference::embedded(), &[("selenious-acid", percent)]));
        findings.into_iter().find(|finding| finding.rules == Some(Rules::UnGhs) && finding.statement == "H302")
    };
    assert_eq!(swallowed(3.0), None);
    assert!(swallowed(5.0).is_some());
    let decided = swallowed(10.0).and_then(|finding| finding.decided).expect("it is harmful");
    assert!((decided.value - 1000.0).abs() < 1e-6);
}

#[test]
fn thinned_blackener_harms_water_by_the_sums_and_burns_by_its_ph() {
    // UN GHS 4.1.3.5.5: 100 · 0.3 % = 30 %; 3.2.3.1.2: pH below 2.
    let mut wipe = mixture(Reference::embedded(), &[("selenious-acid", 0.3), ("phosphoric-acid", 0.8)]);
    wipe.ph = Some(1.8);
    assert_eq!(codes(&of_mixture("wipe", &wipe, Reference::embedded())), ["H314", "H412"]);
    wipe.low_reserve = true;
    assert_eq!(codes(&of_mixture("wipe", &wipe, Reference::embedded())), ["H412"]);
}

#[test]
fn european_limits_of_single_substances() {
    // Regulation (EC) No 1272/2008, Annex VI (from memory): sodium hydroxide 0.5 to 2 % irritates, from 2 % burns; phosphoric acid 10 to
    // 25 % irritates; hydrochloric acid 10 to 25 % irritates skin and airways; methanol 3 to 10 % may damage organs.
    for (key, percent, expected) in [
        ("sodium-hydroxide", 0.4, [].as_slice()),
        ("sodium-hydroxide", 0.5, &["H315", "H319"]),
        ("sodium-hydroxide", 2.0, &["H314"]),
        ("sodium-hydroxide", 5.0, &["H314"]),
        ("phosphoric-acid", 9.9, &[]),
        ("phosphoric-acid", 10.0, &["H315", "H319"]),
        ("phosphoric-acid", 25.0, &["H314"]),
        ("hydrochloric-acid", 10.0, &["H315", "H319", "H335"]),
        ("hydrochloric-acid", 25.0, &["H314", "H335"]),
    ] {
        let findings = classify(&mixture(Reference::embedded(), &[(key, percent)]));
        let skin: Vec<_> = statements(&findings, Rules::Clp).into_iter().filter(|code| code.starts_with("H31") || code == "H335").collect();
        assert_eq!(skin, expected, "{percent} % {key}");
    }
    let organs = |percent| {
        let findings = classify(&mixture(Reference::embedded(), &[("methanol", percent)]));
        statements(&findings, Rules::Clp).into_iter().find(|code| code.starts_with("H37"))
    };
    assert_eq!([2.9, 3.0, 10.0].map(organs), [None, Some("H371".to_owned()), Some("H370".to_owned())]);
}

/// Data with one substance of these classes.
fn made_up(rows: &[(&str, &str)]) -> Reference {
    let row = |(key, rest): &(&str, &str)| {
        format!("[[substance]]\nkey = \"{key}\"\nname = \"{key}\"\nstate = \"liquid\"\nsource = \"x\"\n{rest}\n")
    };
    let text: String = rows.iter().map(row).collect();
    Reference::parse(&[DataFile { path: "substances/solvents.toml", text: &text }]).expect("the made-up rows are sound")
}

#[test]
fn fluoride_on_the_skin_is_a_case_for_the_hospital() {
    // Common practice of first aid for fluorides: water at once, calcium gluconate gel, hospital even without pain.
    let reference = Reference::embedded();
    let aid = |key: &str| of_fluid(reference.fluid(key).expect("the data have it"), reference).first_aid;
    let flux = aid("fluoride-flux");
    assert!(flux.contains("calcium gluconate gel") && flux.contains("even without pain") && flux.contains("with the data sheet"), "{flux}");
    assert!(!flux.contains("for 15 minutes"), "{flux}");
    let thin = of_mixture("rinse", &mixture(reference, &[("potassium-fluoride", 0.2)]), reference).first_aid;
    assert!(thin.contains("calcium gluconate gel"), "{thin}");
    assert!(!aid("battery-acid").contains("gluconate") && aid("battery-acid").contains("for 15 minutes"));
}

#[test]
fn the_stricter_of_statement_and_sum_stands_on_a_product() {
    // UN GHS, table 2.6.1: from 60 to 93 °C category 4, H227. Table 3.2.3: from 5 % of what burns the skin on, H314, where CLP gives
    // phosphoric acid below 25 % only H315 and H319 (both from memory).
    let reference = Reference::embedded();
    let label = |key: &str| of_fluid(reference.fluid(key).expect("the data have it"), reference);
    for key in ["cutting-fluid-light", "cyanoacrylate", "pipe-paste"] {
        assert!(codes(&label(key)).contains(&"H227"), "{key}");
        let mut silent = reference.fluid(key).expect("the data have it").clone();
        silent.hazards.statements.retain(|code| code != "H227");
        let worked = of_fluid(&silent, reference);
        assert!(codes(&worked).contains(&"H227") && worked.notes.iter().any(|note| note.contains("H227")), "{key}");
    }
    let remover = label("rust-remover");
    assert!(codes(&remover).contains(&"H314") && !codes(&remover).contains(&"H315"), "{:?}", codes(&remover));
    assert_eq!(remover.signal, Some(Signal::Danger));
    assert!(remover.notes.iter().any(|note| note.contains("H314") && note.contains("your pack goes first")), "{:?}", remover.notes);
    for key in ["threadlock-medium", "alkaline-degreaser"] {
        assert!(!codes(&label(key)).contains(&"H227"), "{key}");
    }
}

#[test]
fn whatever_holds_ptfe_stays_away_from_heat_and_tobacco() {
    // Common practice: polymer-fume fever, from what was heated or smoked.
    let reference = Reference::embedded();
    let holding = reference.fluids.values().filter(|fluid| fluid.traits.contains(&Trait::Ptfe));
    for fluid in holding {
        assert!(fluid.about.contains("no smoking"), "{}", fluid.key);
        let label = of_fluid(fluid, reference);
        assert!(label.never_with.iter().any(|never| never.what.contains("hot work") && never.why.contains("fever")), "{}", fluid.key);
    }
}

#[test]
fn a_mouthful_of_blackening_is_a_case_for_the_hospital() {
    // Common practice: deaths from swallowed blackening are on record; selenious acid is the poison in it.
    let reference = Reference::embedded();
    for key in ["cold-blackening", "blackening-wipe"] {
        let fluid = reference.fluid(key).expect("the data have it");
        for label in [of_fluid(fluid, reference), of_dilution(fluid, 0.1, None, reference)] {
            assert!(label.first_aid.contains("even a mouthful has killed"), "{}: {}", label.product, label.first_aid);
            assert!(label.first_aid.contains("out of reach of children"), "{}", label.first_aid);
        }
    }
}

#[test]
fn two_kinds_of_harm_to_children_are_both_said() {
    // UN GHS, Annex 3: H360 without letters holds for both.
    let data = made_up(&[("one", "hazards = [\"Repr. 1B: H360F\"]"), ("other", "hazards = [\"Repr. 1B: H360D\"]")]);
    assert_eq!(statements(&classify(&mixture(&data, &[("one", 1.0), ("other", 1.0)])), Rules::Clp), ["H360"]);
    assert_eq!(statements(&classify(&mixture(&data, &[("one", 1.0), ("other", 0.01)])), Rules::Clp), ["H360F"]);
}

#[test]
fn a_thinned_product_keeps_what_its_contents_do_not_explain() {
    // Common practice: what nobody can show to be gone stays on the label.
    let reference = Reference::embedded();
    let mut product = reference.fluid("neutral-detergent").expect("the data have it").clone();
    product.hazards.statements = ["H225", "H317", "H290"].map(str::to_owned).to_vec();
    product.contents.clear();
    let label = of_dilution(&product, 0.05, None, reference);
    assert_eq!(codes(&label), ["H290", "H317"]);
    assert!(label.product.ends_with("5 % in water"), "{}", label.product);
}

#[test]
fn each_cut_off_decides_at_itself_and_not_below() {
    use Rules::{Clp, Osha, UnGhs};
    const THREE: &[Rules] = &[UnGhs, Clp, Osha];
    const TWO: &[Rules] = &[UnGhs, Clp];
    // UN GHS tables 3.2.3, 3.3.3, 3.4.5, 3.5.1, 3.6.1, 3.7.1, 3.8.2, 3.9.3, 3.10, 4.1.3, 4.1.4; 29 CFR 1910.1200 Appendix A, tables
    // A.4.5 to A.9.3 (from memory). Percent at which the statement appears.
    for (class, rules, percent, statement) in [
        ("Skin Corr. 1B", &[UnGhs, Osha][..], 5.0, "H314"),
        ("Skin Corr. 1B", THREE, 1.0, "H315"),
        ("Skin Irrit. 2", THREE, 10.0, "H315"),
        ("Eye Dam. 1", THREE, 3.0, "H318"),
        ("Eye Dam. 1", THREE, 1.0, "H319"),
        ("Skin Corr. 1A", THREE, 3.0, "H318"),
        ("Eye Irrit. 2", THREE, 10.0, "H319"),
        ("Resp. Sens. 1", TWO, 1.0, "H334"),
        ("Resp. Sens. 1", &[Osha], 0.1, "H334"),
        ("Skin Sens. 1", TWO, 1.0, "H317"),
        ("Skin Sens. 1", &[Osha], 0.1, "H317"),
        ("Skin Sens. 1A", THREE, 0.1, "H317"),
        ("Skin Sens. 1B", THREE, 1.0, "H317"),
        ("Muta. 1B", THREE, 0.1, "H340"),
        ("Muta. 2", THREE, 1.0, "H341"),
        ("Carc. 1A", THREE, 0.1, "H350"),
        ("Carc. 2", TWO, 1.0, "H351"),
        ("Carc. 2", &[Osha], 0.1, "H351"),
        ("Repr. 1B", TWO, 0.3, "H360"),
        ("Repr. 1B", &[Osha], 0.1, "H360"),
        ("Repr. 2", TWO, 3.0, "H361"),
        ("Repr. 2", &[Osha], 0.1, "H361"),
        ("Lact.", TWO, 0.3, "H362"),
        ("STOT SE 1", TWO, 10.0, "H370"),
        ("STOT SE 1", TWO, 1.0, "H371"),
        ("STOT SE 1", &[Osha], 1.0, "H370"),
        ("STOT SE 2", TWO, 10.0, "H371"),
        ("STOT RE 1", TWO, 10.0, "H372"),
        ("STOT RE 1", TWO, 1.0, "H373"),
        ("STOT RE 2", TWO, 10.0, "H373"),
        ("STOT SE 3 (narcotic)", THREE, 20.0, "H336"),
        ("STOT SE 3 (irritation)", THREE, 20.0, "H335"),
        ("Asp. Tox. 1", THREE, 10.0, "H304"),
        ("Aquatic Acute 1", TWO, 25.0, "H400"),
        ("Aquatic Acute 1", &[UnGhs], 2.5, "H401"),
        ("Aquatic Acute 1", &[UnGhs], 0.25, "H402"),
        ("Aquatic Chronic 1", TWO, 25.0, "H410"),
        ("Aquatic Chronic 1", TWO, 2.5, "H411"),
        ("Aquatic Chronic 1", TWO, 0.25, "H412"),
        ("Aquatic Chronic 2", TWO, 25.0, "H411"),
        ("Aquatic Chronic 2", TWO, 2.5, "H412"),
        ("Aquatic Chronic 3", TWO, 25.0, "H412"),
        ("Aquatic Chronic 4", TWO, 25.0, "H413"),
        // Converted point over share: 100 / 5 % = 2000 mg/kg; 100 / (100/3) % = 300; 500 / 25 % = 2000; 300 / 30 % = 1000.
        ("Acute Tox. 3 (oral)", THREE, 5.0, "H302"),
        ("Acute Tox. 3 (oral)", THREE, 100.0 / 3.0, "H301"),
        ("Acute Tox. 4 (oral)", THREE, 25.0, "H302"),
        ("Acute Tox. 3 (dermal)", THREE, 30.0, "H311"),
        // What gives no vapour is breathed as mist: 0.5 / 50 % = 1 mg/L.
        ("Acute Tox. 3 (inhalation)", THREE, 50.0, "H331"),
    ] {
        let data = made_up(&[("it", &format!("hazards = [\"{class}\"]"))]);
        for &rules in rules {
            let found = |percent: f64| {
                let findings = classify(&mixture(&data, &[("it", percent)]));
                findings.iter().any(|finding| finding.rules == Some(rules) && finding.statement == statement)
            };
            let seen = [percent * 0.999, percent, percent * 1.001].map(found);
            assert_eq!(seen, [false, true, true], "{class} → {statement} by {rules} at {percent} %");
        }
    }
}

#[test]
fn what_evaporates_is_breathed_as_vapour() {
    // UN GHS, tables 3.1.1 and 3.1.2 (from memory): 3 mg/L / 30 % = 10 mg/L for a vapour.
    let data = made_up(&[(
        "it",
        "molar-mass-g-per-mol = { value = 58.0, source = \"x\" }\n\
         antoine = { a = 6.3, b = 1245.0, c = 233.0, from = \"0 degC\", to = \"60 degC\", source = \"x\" }\n\
         hazards = [\"Acute Tox. 3 (inhalation)\"]",
    )]);
    let poisons = |percent| statements(&classify(&mixture(&data, &[("it", percent)])), Rules::UnGhs).contains(&"H331".to_owned());
    assert!(poisons(30.0));
    assert!(!poisons(29.9));
}

#[test]
fn what_is_known_of_people_stays_apart_from_what_is_supposed() {
    // UN GHS, chapters 3.5 to 3.7: category 1A is known from people, 1B is presumed; a mixture keeps the one of its part.
    for (class, other) in [("Carc. 1A", "Carc. 1B"), ("Muta. 1A", "Muta. 1B"), ("Repr. 1A", "Repr. 1B")] {
        let data = made_up(&[("known", &format!("hazards = [\"{class}\"]")), ("supposed", &format!("hazards = [\"{other}\"]"))]);
        let codes = |parts: &[(&str, f64)]| {
            let findings = classify(&mixture(&data, parts));
            findings.iter().map(|finding| finding.class.code().to_owned()).collect::<Vec<_>>()
        };
        assert!(codes(&[("known", 1.0), ("supposed", 1.0)]).iter().all(|code| code == class));
        assert!(codes(&[("supposed", 1.0)]).iter().all(|code| code == other));
    }
}

#[test]
fn alcohol_in_water_flashes_no_later_than_measured() {
    // Closed cup, from memory of safety data sheets: 10 % isopropanol 41 °C, 10 % ethanol 49 °C, 30 % ethanol 29 °C, 70 % isopropanol
    // 18 °C; below 23 °C is category 2, to 60 °C category 3 (UN GHS, table 2.6.1).
    let class = |key, percent| {
        let findings = classify(&mixture(Reference::embedded(), &[(key, percent)]));
        findings.into_iter().find(|finding| finding.class.code().starts_with("Flam. Liq.")).map(|found| (found.class.code(), found.decided))
    };
    for (key, percent, measured, category) in [
        ("isopropanol", 10.0, 41.0, "Flam. Liq. 3"),
        ("isopropanol", 70.0, 18.0, "Flam. Liq. 2"),
        ("ethanol", 10.0, 49.0, "Flam. Liq. 3"),
        ("ethanol", 30.0, 29.0, "Flam. Liq. 2"),
    ] {
        let (found, decided) = class(key, percent).expect("it burns");
        let flash = decided.expect("its flash point decided").value;
        assert!(flash <= measured && flash >= measured - 25.0, "{percent} % {key}: {flash}");
        assert!(found <= category, "{percent} % {key}: {found}");
    }
    assert_eq!(class("ethanol", 0.5), None);
}

#[test]
fn a_label_says_where_the_skull_does_not_outrank_the_mark() {
    // 29 CFR 1910.1200, Appendix C.2.1 (from memory).
    let data =
        made_up(&[("it", "hazards = [\"Acute Tox. 3 (oral)\", \"Skin Irrit. 2\"]"), ("other", "hazards = [\"Acute Tox. 3 (oral)\"]")]);
    let notes = |key| of_mixture("it", &mixture(&data, &[(key, 100.0)]), &data).notes.join(" ");
    assert!(notes("it").contains("By OSHA the exclamation mark"), "{}", notes("it"));
    assert!(!notes("other").contains("exclamation"), "{}", notes("other"));
}

#[test]
fn shares_of_several_add_up() {
    // UN GHS, table 3.2.3: 10 · 0.4 % + 6 % = 10 %. Table 3.3.3: 2 % + 1 % = 3 %. Table 4.1.3: 10 · 10 · 0.2 % + 5 % = 25 %.
    let data = made_up(&[
        ("burns", "hazards = [\"Skin Corr. 1B\"]"),
        ("itches", "hazards = [\"Skin Irrit. 2\"]"),
        ("blinds", "hazards = [\"Eye Dam. 1\"]"),
        ("kills-fish", "hazards = [\"Aquatic Chronic 1\"]\nm-factor = { acute = 1, chronic = 10 }"),
        ("harms-fish", "hazards = [\"Aquatic Chronic 2\"]"),
    ]);
    for (parts, statement) in [
        ([("burns", 0.4), ("itches", 6.0)], "H315"),
        ([("burns", 2.0), ("blinds", 1.0)], "H318"),
        ([("kills-fish", 0.2), ("harms-fish", 5.0)], "H411"),
    ] {
        let has = |parts: &[(&str, f64)]| statements(&classify(&mixture(&data, parts)), Rules::UnGhs).iter().any(|code| code == statement);
        assert!(has(&parts), "{statement}");
        let [one, (other, percent)] = parts;
        assert!(!has(&[one, (other, percent * 0.99)]), "{statement} below");
    }
}

#[test]
fn what_is_unknown_counts_above_a_tenth() {
    // UN GHS 3.1.3.6.2.3: (100 − 11) / (4.6 / 100) = 1935 mg/kg, where the known alone would come to 2174.
    let data = made_up(&[("it", "hazards = [\"Acute Tox. 3 (oral)\"]")]);
    let mut known = mixture(&data, &[("it", 4.6)]);
    let swallowed = |mixture: &Mixture<'_>| statements(&classify(mixture), Rules::UnGhs) == ["H302"];
    assert!(!swallowed(&known));
    known.unknown = 0.1;
    assert!(!swallowed(&known));
    known.unknown = 0.11;
    assert!(swallowed(&known));
}

#[test]
fn flash_points_and_ph_decide_at_their_limits() {
    // UN GHS, table 2.6.1 and 3.2.3.1.2; Regulation (EC) No 1272/2008 knows no category 4.
    let data = made_up(&[("oil", "")]);
    let with = |change: &dyn Fn(&mut Mixture<'_>), rules| {
        let mut mixture = mixture(&data, &[("oil", 100.0)]);
        change(&mut mixture);
        statements(&classify(&mixture), rules).first().cloned().unwrap_or_default()
    };
    let celsius = |t: &str| parse::<Temperature>(t).expect("it is a temperature");
    for (flash, un, clp) in [
        ("22.9 °C", "H225", "H225"),
        ("23 °C", "H226", "H226"),
        ("60 °C", "H226", "H226"),
        ("60.1 °C", "H227", ""),
        ("93 °C", "H227", ""),
        ("93.1 °C", "", ""),
    ] {
        let change = |mixture: &mut Mixture<'_>| mixture.flash = Some(celsius(flash));
        assert_eq!([with(&change, Rules::UnGhs), with(&change, Rules::Clp)], [un, clp], "{flash}");
    }
    let boils = |mixture: &mut Mixture<'_>| (mixture.flash, mixture.boiling) = (Some(celsius("-20 °C")), Some(celsius("35 °C")));
    assert_eq!(with(&boils, Rules::Osha), "H224");
    for (ph, statement) in [(2.0, "H314"), (2.01, ""), (11.49, ""), (11.5, "H314")] {
        assert_eq!(with(&|mixture| mixture.ph = Some(ph), Rules::UnGhs), statement, "pH {ph}");
    }
}

#[test]
fn thick_oil_is_not_drawn_into_the_lungs_and_neither_is_spray() {
    // UN GHS, chapter 3.10: 20.5 mm²/s at 40 °C. Regulation (EC) No 1272/2008, Annex I, 1.3.3: not told of sealed spray cans.
    let data = made_up(&[("oil", "hazards = [\"Asp. Tox. 1\"]")]);
    let drawn_in = |thick: &str| {
        let mut oil = mixture(&data, &[("oil", 100.0)]);
        oil.viscosity_40 = Some(parse::<KinematicViscosity>(thick).expect("it is a viscosity"));
        classify(&oil).iter().any(|finding| finding.statement == "H304")
    };
    assert_eq!(["20.4 mm2/s", "20.5 mm2/s", "20.6 mm2/s"].map(drawn_in), [true, true, false]);
    let shown = |codes: &[&str]| prune(codes.iter().map(|code| hazard(code)).collect()).len();
    assert_eq!(shown(&["H222", "H304", "H336"]), 2);
}

#[test]
fn one_splash_changes_the_category() {
    // Le Chatelier with Raoult: 5 % by mass of n-hexane bring n-decane from 48 to 15 °C (worked independently).
    let blend = |hexane| {
        statements(&classify(&mixture(Reference::embedded(), &[("n-decane", 100.0 - hexane), ("n-hexane", hexane)])), Rules::UnGhs)
    };
    assert!(blend(0.0).contains(&"H226".to_owned()), "{:?}", blend(0.0));
    assert!(blend(5.0).contains(&"H225".to_owned()), "{:?}", blend(5.0));
}

#[test]
fn heavy_oil_makes_nothing_flash_sooner() {
    // Raoult: what does not evaporate only takes vapour away.
    let reference = Reference::embedded();
    let burns = |parts: &[(&str, f64)]| {
        let findings = classify(&mixture(reference, parts));
        findings
            .into_iter()
            .find(|finding| finding.rules == Some(Rules::UnGhs) && finding.class.code().starts_with("Flam. Liq."))
            .map(|found| found.class)
    };
    let liquids: Vec<_> =
        reference.substances.values().filter(|substance| substance.flash.is_some() && substance.antoine.is_some()).collect();
    assert!(liquids.len() > 10);
    for substance in liquids {
        let (alone, thinned) = (burns(&[(&substance.key, 100.0)]), burns(&[(&substance.key, 90.0), ("mineral-oil", 10.0)]));
        assert!(thinned.is_none() || alone <= thinned, "{}: {alone:?}, {thinned:?}", substance.key);
    }
}

fn hazard(code: &str) -> Classified {
    let class = HazardClass::ALL.iter().find(|class| code.starts_with(class.statement())).expect("a class says it");
    Classified { class: *class, statement: code.to_owned() }
}

#[test]
fn what_outranks_what() {
    // UN GHS 1.4.10.5.3 and Annex 1 (from memory): pictograms by their numbers, D danger, W warning.
    for (codes, numbers, word) in [
        (&["H225", "H319", "H336"][..], &[2, 7][..], "D"),
        (&["H226", "H304"], &[2, 8], "D"),
        (&["H226", "H304", "H336"], &[2, 7, 8], "D"),
        (&["H222", "H336"], &[2, 7], "D"),
        (&["H222", "H304", "H336"], &[2, 7], "D"),
        (&["H302", "H319"], &[7], "W"),
        (&["H412"], &[], ""),
        (&["H411"], &[9], ""),
        (&["H410", "H400"], &[9], "W"),
        (&["H227"], &[], "W"),
        (&["H314", "H373", "H411"], &[5, 8, 9], "D"),
        (&["H290", "H315", "H319"], &[5, 7], "W"),
        (&["H314", "H335"], &[5, 7], "D"),
        (&["H318", "H315"], &[5], "D"),
        (&["H225", "H319", "H301", "H311", "H331", "H370"], &[2, 6, 8], "D"),
        (&["H226", "H304", "H336", "H372", "H411"], &[2, 7, 8, 9], "D"),
        (&["H351", "H336", "H411"], &[7, 8, 9], "W"),
        (&["H225", "H304", "H315", "H336", "H361d", "H373"], &[2, 7, 8], "D"),
        (&["H301", "H314", "H360FD"], &[5, 6, 8], "D"),
        (&["H334", "H317", "H315", "H319"], &[8], "D"),
        (&["H334", "H302"], &[7, 8], "D"),
        (&["H272", "H314"], &[3, 5], "D"),
        (&["H280"], &[4], "W"),
        (&["H241"], &[1, 2], "D"),
    ] {
        let classes: Vec<_> = prune(codes.iter().map(|code| hazard(code)).collect()).into_iter().map(|hazard| hazard.class).collect();
        let shown: Vec<_> = pictograms(&classes, Rules::UnGhs).into_iter().map(Pictogram::code).collect();
        let expected: Vec<_> = numbers.iter().map(|number| format!("GHS0{number}")).collect();
        assert_eq!(shown, expected, "{codes:?}");
        let initial = signal(&classes).map_or("", |signal| &signal.word()[..1]);
        assert_eq!(initial, word, "{codes:?}");
    }
}

#[test]
fn the_american_rules_keep_the_mark_beside_the_skull_for_what_is_no_poison() {
    // 29 CFR 1910.1200, Appendix C.2.1 (from memory).
    let both = [HazardClass::AcuteTox3Oral, HazardClass::AcuteTox4Dermal];
    assert_eq!(pictograms(&both, Rules::Osha), [Pictogram::Skull]);
    let irritates = [HazardClass::AcuteTox3Oral, HazardClass::SkinIrrit2];
    assert_eq!(pictograms(&irritates, Rules::Osha), [Pictogram::Skull, Pictogram::ExclamationMark]);
    assert_eq!(pictograms(&irritates, Rules::UnGhs), [Pictogram::Skull]);
}

#[test]
fn statements_that_another_says_are_left_out() {
    // UN GHS, Annex 3, A3.1.2 (from memory).
    for (codes, left) in [
        (&["H314", "H318", "H315", "H319", "H335"][..], &["H314", "H335"][..]),
        (&["H318", "H319", "H315"], &["H318", "H315"]),
        (&["H410", "H400"], &["H410"]),
        (&["H411", "H401"], &["H411"]),
        (&["H412", "H402"], &["H412"]),
        (&["H400", "H412"], &["H400", "H412"]),
    ] {
        let kept: Vec<_> = prune(codes.iter().map(|code| hazard(code)).collect()).into_iter().map(|hazard| hazard.statement).collect();
        assert_eq!(kept, left, "{codes:?}");
    }
}
