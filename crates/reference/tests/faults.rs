//! Broken data are noticed. Each test breaks one thing in the data compiled in.

use reference::{DataError, DataFile, FILES, Reference};

/// The data with one piece of text in one file replaced.
fn broken(path: &str, old: &str, new: &str) -> Result<Reference, DataError> {
    let original = FILES.iter().find(|file| file.path == path).expect("the file is compiled in").text;
    assert!(original.contains(old), "{path} does not hold {old:?}");
    let text = original.replacen(old, new, 1);
    let files: Vec<_> = FILES.iter().map(|file| if file.path == path { DataFile { path, text: &text } } else { *file }).collect();
    Reference::parse(&files)
}

/// The faults of the data so broken.
fn faults(path: &str, old: &str, new: &str) -> Vec<String> {
    broken(path, old, new).expect("it can still be read").faults().iter().map(ToString::to_string).collect()
}

#[test]
fn an_unknown_field_is_refused_with_its_place() {
    let error = broken("fluids/oils.toml", "form = ", "colour = \"blue\"\nform = ").expect_err("there is no such field");
    let DataError::Unreadable { file, message } = error else { panic!("{error}") };
    assert_eq!(file, "fluids/oils.toml");
    assert!(message.contains("colour") && message.contains("line"), "{message}");
}

#[test]
fn a_bare_number_where_a_unit_is_needed_is_refused() {
    let error = broken("fluids/oils.toml", "pour = \"-18 °C\"", "pour = -18").expect_err("a temperature needs a unit");
    assert!(matches!(error, DataError::Unreadable { .. }), "{error}");
}

#[test]
fn a_wrong_unit_is_refused() {
    let error = broken("fluids/oils.toml", "\"68 mm2/s\"", "\"68 mm\"").expect_err("a length is no viscosity");
    assert!(matches!(error, DataError::Unreadable { .. }), "{error}");
}

#[test]
fn a_hazard_class_that_does_not_exist_or_has_another_statement_is_refused() {
    for (old, new, says) in
        [("Flam. Liq. 2: H225", "Flam. Liq. 9: H225", "no hazard class"), ("Flam. Liq. 2: H225", "Flam. Liq. 2: H226", "H225")]
    {
        let error = broken("substances/solvents.toml", old, new).expect_err("the class and its statement are checked");
        assert!(error.to_string().contains(says), "{error}");
    }
}

#[test]
fn two_rows_with_one_key_are_refused() {
    let error = broken("fluids/oils.toml", "slideway-32", "slideway-68").expect_err("the key is taken");
    assert_eq!(error, DataError::Twice { table: "fluids", key: "slideway-68".to_owned() });
}

#[test]
fn an_unknown_file_is_refused() {
    let file = DataFile { path: "notes.toml", text: "" };
    let error = Reference::parse(&[file]).expect_err("no table is kept there");
    assert_eq!(error, DataError::UnknownFile { file: "notes.toml".to_owned() });
}

#[test]
fn what_names_a_missing_row_is_listed() {
    let cases = [
        ("fluids/oils.toml", "classes = [\"slideway-oil\"]", "classes = [\"slidway-oil\"]", "class `slidway-oil`"),
        ("fluids/oils.toml", "\"typical-from-memory\"", "\"typical\"", "source `typical`"),
        ("fluids/oils.toml", "storage = \"oil\"", "storage = \"oils\"", "storage group `oils`"),
        ("fluids/oils.toml", "\"swelling-rubbers\"", "\"rubbers\"", "material `rubbers`"),
        ("fluids/oils.toml", "\"USD\"", "\"USS\"", "currency `USS`"),
        ("fluids/greases.toml", "thickener = \"lithium\"", "thickener = \"lithum\"", "thickener `lithum`"),
        ("practices/cutting.toml", "\"emulsion\"", "\"emulsions\"", "class `emulsions`"),
        ("practices/cutting.toml", "material = \"brass\"", "material = \"bras\"", "material `bras`"),
        ("practices/finishing.toml", "never = [\"soft-wax\"", "never = [\"wax\"", "class `wax`"),
        ("practices/sealing.toml", "\"ptfe-tape\"", "\"tape\"", "class `tape`"),
        ("practices/locking.toml", "\"threadlock-low\"", "\"locker\"", "class `locker`"),
        ("practices/cleaning.toml", "\"dearomatised-solvent\"", "\"solvent\"", "class `solvent`"),
        ("storage.toml", "pair = [\"flammable\"", "pair = [\"flamable\"", "storage group `flamable`"),
        ("thickeners.toml", "pair = [\"lithium\"", "pair = [\"lithum\"", "thickener `lithum`"),
        ("templates/bench-lathe.toml", "\"paint\"", "\"varnish\"", "material `varnish`"),
        ("climates.toml", "\"common-practice\"", "\"hearsay\"", "source `hearsay`"),
        ("fluids/cleaners.toml", "substance = \"acetone\"", "substance = \"aceton\"", "substance `aceton`"),
        ("substances/solvents.toml", "groups = [\"flammable\"]", "groups = [\"burning\"]", "storage group `burning`"),
        ("substances/solvents.toml", "\"fuller-1966\"", "\"fuller\"", "source `fuller`"),
    ];
    for (path, old, new, expected) in cases {
        let found = faults(path, old, new);
        assert!(found.iter().any(|fault| fault.contains(expected)), "{path}: {found:?}");
    }
}

#[test]
fn what_contradicts_itself_is_listed() {
    let cases = [
        ("fluids/oils.toml", "viscosity-100 = \"8.53 mm2/s\", index = 95, ", "", "neither a viscosity"),
        ("fluids/oils.toml", "viscosity-100 = \"8.53 mm2/s\"", "viscosity-100 = \"85.3 mm2/s\"", "not thinner"),
        ("fluids/oils.toml", "opened = \"2.5 years\"", "opened = \"25 years\"", "keeps longer opened"),
        ("fluids/oils.toml", "price = 10", "price = 0", "costs nothing"),
        ("fluids/oils.toml", "year = 2024", "year = 24", "year of a price"),
        ("fluids/oils.toml", "\"H304\"", "\"R65\"", "not a hazard statement"),
        ("fluids/greases.toml", "consistency = 2", "consistency = 9", "consistency number"),
        ("fluids/adhesives.toml", "load-after = \"24 h\"", "load-after = \"1 min\"", "loaded before"),
        ("practices/cutting.toml", "operation = \"mill\"", "operation = \"turn\"", "stands there twice"),
        ("practices/cutting.toml", "[1.72, 1.88, 2.24]", "[1.72, 2.88, 2.24]", "out of order"),
        ("climates.toml", "coldest = \"3 °C\"", "coldest = \"30 °C\"", "out of order"),
        ("substances/solvents.toml", "\"67-64-1\"", "\"67-64-2\"", "no registry number"),
        (
            "substances/solvents.toml",
            "lower-flammable = { value = \"2.5 %\"",
            "lower-flammable = { value = \"25 %\"",
            "limits are out of order",
        ),
        ("substances/solvents.toml", "flash = { value = \"-20 degC\"", "flash = { value = \"60 degC\"", "flashes hotter than it boils"),
        (
            "fluids/finishes.toml",
            "\"mineral-oil\", share = \"86 .. 90 .. 95 %\"",
            "\"mineral-oil\", share = \"97 .. 98 .. 99 %\"",
            "more than the whole",
        ),
    ];
    for (path, old, new, expected) in cases {
        let found = faults(path, old, new);
        assert!(found.iter().any(|fault| fault.contains(expected)), "{path}: {found:?}");
    }
}
