//! What cleaners do to plastics, rubbers, paint and metals: resistance tables of plastics and rubbers, *from memory*.

use reference::{Fluid, Reference};

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Harm {
    Fine,
    Care,
    Attack,
}
use Harm::{Attack, Care, Fine};

fn harm(fluid: &Fluid, material: &str) -> Harm {
    let names = |list: &[String]| list.iter().any(|name| Reference::embedded().is_a(material, name));
    match (names(&fluid.chemistry.attacks), names(&fluid.chemistry.care)) {
        (true, _) => Attack,
        (false, true) => Care,
        (false, false) => Fine,
    }
}

const MATERIALS: [&str; 14] = [
    "abs",
    "polystyrene",
    "polycarbonate",
    "acrylic",
    "pvc",
    "polyethylene",
    "nylon",
    "nbr",
    "fkm",
    "epdm",
    "natural-rubber",
    "paint",
    "aluminium",
    "zinc-plate",
];

/// For each cleaner what it does at least to each material. "Test first" and "swells slightly" are care.
const TABLE: [(&str, [Harm; 14]); 7] = [
    ("acetone", [Attack, Attack, Attack, Attack, Attack, Fine, Fine, Attack, Attack, Fine, Fine, Attack, Fine, Fine]),
    ("isopropanol", [Fine, Fine, Attack, Attack, Fine, Fine, Fine, Fine, Fine, Fine, Fine, Care, Fine, Fine]),
    ("alcohol", [Fine, Fine, Attack, Attack, Fine, Fine, Fine, Fine, Fine, Fine, Fine, Care, Fine, Fine]),
    ("dearomatised-solvent", [Care, Care, Care, Care, Care, Care, Fine, Fine, Fine, Attack, Attack, Fine, Fine, Fine]),
    ("aromatic-thinner", [Attack, Attack, Attack, Attack, Attack, Care, Fine, Attack, Fine, Attack, Attack, Attack, Fine, Fine]),
    ("chlorinated-cleaner", [Attack, Attack, Attack, Attack, Attack, Fine, Fine, Attack, Fine, Attack, Attack, Attack, Attack, Fine]),
    ("alkaline-degreaser", [Fine, Fine, Attack, Fine, Fine, Fine, Fine, Fine, Care, Fine, Fine, Care, Attack, Attack]),
];

#[test]
fn cleaners_do_what_resistance_tables_say() {
    for (key, row) in TABLE {
        let fluid = Reference::embedded().fluid(key).expect("the cleaner is there");
        for (material, least) in MATERIALS.into_iter().zip(row) {
            assert!(harm(fluid, material) >= least, "{key} on {material}: {:?} instead of {least:?}", harm(fluid, material));
        }
    }
}

/// Nothing is barred from what it is known to leave alone.
#[test]
fn cleaners_leave_alone_what_they_leave_alone() {
    let cases = [
        ("acetone", "polyethylene"),
        ("acetone", "nylon"),
        ("acetone", "epdm"),
        ("isopropanol", "nbr"),
        ("isopropanol", "aluminium"),
        ("dearomatised-solvent", "nbr"),
        ("dearomatised-solvent", "paint"),
        ("dearomatised-solvent", "aluminium"),
        ("alkaline-degreaser", "polyethylene"),
        ("alkaline-degreaser", "nbr"),
        ("neutral-detergent", "polycarbonate"),
    ];
    for (key, material) in cases {
        let fluid = Reference::embedded().fluid(key).expect("the cleaner is there");
        assert_eq!(harm(fluid, material), Fine, "{key} on {material}");
    }
}

/// What a fluid is made of decides: solvents in bottles of other names do the same.
#[test]
fn contents_harm_under_every_name() {
    let cases = [
        (&["acetone", "butanone"][..], 0.3, &["abs", "polystyrene", "acrylic", "polycarbonate", "pvc", "nbr"][..], Attack),
        (&["toluene", "xylene"][..], 0.3, &["abs", "polystyrene", "polycarbonate", "nbr", "natural-rubber"][..], Attack),
        (
            &["dearomatised-naphtha", "stoddard-solvent", "kerosene", "light-naphtha"][..],
            0.3,
            &["abs", "polystyrene", "pvc", "epdm"][..],
            Care,
        ),
        (
            &["sodium-hydroxide", "sodium-metasilicate", "potassium-hydroxide"][..],
            0.01,
            &["aluminium", "zinc-plate", "magnesium"][..],
            Attack,
        ),
        (&["tetrachloroethylene", "trichloroethylene", "dichloromethane"][..], 0.3, &["aluminium", "magnesium", "nbr"][..], Attack),
    ];
    for (substances, share, materials, least) in cases {
        for fluid in Reference::embedded().fluids.values() {
            let rows = fluid.contents.iter().filter(|row| substances.contains(&row.substance.as_str()));
            if rows.map(|row| row.share.likely).sum::<f64>() >= share {
                for material in materials {
                    assert!(harm(fluid, material) >= least, "{} on {material}", fluid.key);
                }
            }
        }
    }
}
