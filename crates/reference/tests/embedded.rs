//! The data compiled in are readable, complete and fit together.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use reference::{FILES, Form, Reference};

/// Every TOML file under a folder.
fn toml_files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).expect("the folder of the data can be read") {
        let path = entry.expect("its entries can be read").path();
        if path.is_dir() {
            toml_files(&path, found);
        } else {
            found.push(path);
        }
    }
}

#[test]
fn nothing_dangles_and_nothing_is_incomplete() {
    let faults: Vec<_> = Reference::embedded().faults().iter().map(ToString::to_string).collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn every_file_under_data_is_compiled_in() {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("data");
    let mut found = Vec::new();
    toml_files(&data, &mut found);
    let on_disk: BTreeSet<_> =
        found.iter().map(|path| path.strip_prefix(&data).expect("it lies under data").to_string_lossy().replace('\\', "/")).collect();
    let compiled: BTreeSet<_> = FILES.iter().map(|file| file.path.to_owned()).collect();
    assert_eq!(on_disk, compiled);
}

#[test]
fn every_class_has_a_fluid_and_only_barred_classes_have_none_to_recommend() {
    // What is named only to be refused.
    let barred: BTreeSet<_> = [
        "used-engine-oil",
        "chlorinated-cutting-oil",
        "chlorinated-cleaner",
        "petrol",
        "hot-blackening",
        "phosphate-concentrate",
        "hydrochloric-acid",
        "lead-paste",
    ]
    .into();
    let reference = Reference::embedded();
    for key in reference.classes.keys() {
        let fluids: Vec<_> = reference.fluids_of(key).collect();
        assert!(!fluids.is_empty(), "no fluid is a {key}");
        let all_barred = fluids.iter().all(|fluid| fluid.barred.is_some());
        assert_eq!(all_barred, barred.contains(key.as_str()), "{key}");
    }
}

#[test]
fn practices_never_rank_a_barred_class() {
    let reference = Reference::embedded();
    let mut ranked: Vec<&String> = Vec::new();
    ranked.extend(reference.cuts.iter().flat_map(|row| &row.ranked));
    ranked.extend(reference.cleanings.values().flat_map(|row| row.first.iter().chain(&row.second)));
    ranked.extend(reference.finish_rules.values().flat_map(|row| &row.ranked));
    ranked.extend(reference.sealings.iter().flat_map(|row| &row.ranked));
    ranked.extend(reference.lockings.values().flat_map(|row| &row.ranked));
    for class in ranked {
        assert!(reference.fluids_of(class).any(|fluid| fluid.barred.is_none()), "{class}");
    }
}

#[test]
fn chapters_hold_what_their_name_says() {
    let chapter = |path: &str| {
        let files: Vec<_> = FILES.iter().filter(|file| file.path == path || !file.path.starts_with("fluids/")).copied().collect();
        Reference::parse(&files).expect("a chapter can be read on its own").fluids
    };
    for (key, fluid) in chapter("fluids/oils.toml") {
        assert_eq!(fluid.form, Form::Oil, "{key}");
    }
    for (key, fluid) in chapter("fluids/greases.toml") {
        assert!(matches!(fluid.form, Form::Grease | Form::Paste), "{key}");
    }
    for (key, fluid) in chapter("fluids/adhesives.toml") {
        assert!(fluid.bond.is_some() || key == "activator", "{key}");
    }
    for (key, fluid) in chapter("fluids/sealants.toml") {
        assert!(fluid.bond.is_some(), "{key}");
    }
}

#[test]
fn there_are_enough_fluids_and_templates() {
    let reference = Reference::embedded();
    assert!(reference.fluids.len() >= 80, "{} fluids", reference.fluids.len());
    assert!(reference.templates.len() >= 14, "{} templates", reference.templates.len());
}
