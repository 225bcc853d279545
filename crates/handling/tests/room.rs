//! What one breathes, what burns, what stands apart and what is never done: cases from outside, trade facts, laws.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

use formulas::flammability::Drying;
use handling::air::{Exposure, Room, Use, Way, emissions, exposure};
use handling::bars::{ALL, Beside, bar};
use handling::cautions::{Kept, Place, cautions};
use handling::fire::{burns, rag, spill};
use handling::together::{Height, between, conflicts, shelves, spoiled, tray};
use proptest::prelude::*;
use reference::storage::Reaction;
use reference::substance::Regime;
use reference::{Apart, Fluid, Reference, Trait};
use units::{Area, Frequency, Quantity, System, Temperature, Time, Volume};

fn reference() -> &'static Reference {
    Reference::embedded()
}

fn fluid(key: &str) -> &'static Fluid {
    reference().fluid(key).unwrap()
}

fn garage(changes: f64) -> Room {
    Room {
        volume: Volume::from_base(36.0),
        changes: Frequency::from_base(changes / 3600.0),
        temperature: Temperature::from_base(293.15),
        flames: false,
        attached_to_house: false,
    }
}

fn wiped(ml: f64, m2: f64, minutes: f64) -> Use {
    Use { amount: Volume::from_base(ml * 1e-6), way: Way::Wiped(Area::from_base(m2)), lasts: Time::from_base(minutes * 60.0) }
}

fn breathed(key: &str, used: &Use, room: &Room) -> Option<Exposure<'static>> {
    exposure(fluid(key), used, room, reference()).unwrap()
}

/// Acetone from a tray of 0.06 m² at 0.25 m/s: 3.16 g/min (Mackay and Matsugu, computed independently); the unsafe end is half as much again.
#[test]
fn acetone_leaves_a_tray() {
    let used = Use { amount: Volume::from_base(1e-2), way: Way::Tray(Area::from_base(0.06)), lasts: Time::from_base(3600.0) };
    let leaves = emissions(fluid("acetone"), &used, &garage(0.5), reference()).unwrap();
    let grams_a_minute = leaves.first().unwrap().rate / 60e3;
    assert!((3.16..1.6 * 3.16).contains(&grams_a_minute), "{grams_a_minute}");
    // At 250 ppm it would take some 26 air changes an hour: outdoors, no door is enough (*common practice* for the door).
    let found = breathed("acetone", &used, &garage(0.5)).unwrap();
    assert!(found.of_limit > 1.0);
    assert!(found.changes_needed.is_none());
    assert!(found.words(System::Metric).contains("outdoors"), "{}", found.words(System::Metric));
}

/// A few millilitres wiped on a small part stay far below the limits; a litre over a day's cleaning does not (*common practice, no source*).
#[test]
fn a_wipe_is_right_and_a_litre_is_not() {
    let few = breathed("acetone", &wiped(5.0, 0.05, 10.0), &garage(0.5)).unwrap();
    assert!(few.of_limit < 0.5, "{}", few.words(System::Metric));
    let litre = breathed("acetone", &wiped(1000.0, 1.0, 120.0), &garage(0.3)).unwrap();
    assert!(litre.of_limit > 1.0, "{}", litre.words(System::Metric));
    assert!(litre.amount_allowed.is_some());
    // What is allowed is allowed.
    let less = litre.amount_allowed.unwrap().value * 1e6;
    assert!(breathed("acetone", &wiped(less, 1.0, 120.0), &garage(0.3)).unwrap().of_limit <= 1.001);
    // Oils stay where they are.
    assert!(breathed("slideway-68", &wiped(50.0, 1.0, 10.0), &garage(0.3)).is_none());
}

/// The strictest regime decides, and is named: 0.14 ppm of tetrachloroethylene (40 CFR 751), 200 ppm of isopropanol (Ontario).
#[test]
fn the_strictest_decides() {
    let strictest = |key: &str| {
        let substance = reference().substance(key).unwrap();
        handling::air::limit(substance, reference::substance::LimitKind::Mean8h).unwrap().regime
    };
    assert_eq!(strictest("tetrachloroethylene"), Some(Regime::UsEpa));
    assert_eq!(strictest("isopropanol"), Some(Regime::Ontario));
    let found = breathed("chlorinated-cleaner", &wiped(1.0, 0.01, 1.0), &garage(20.0)).unwrap();
    assert!(found.of_limit > 1.0, "no amount of a solvent that may cause cancer is called safe");
}

/// 0.46 mL of acetone bring a cupboard of 60 L to a tenth of its limit (computed independently, within 3 %).
#[test]
fn a_spill_in_a_cupboard() {
    let volume = spill(fluid("acetone"), Volume::from_base(0.06), Temperature::from_base(293.15), reference()).unwrap().unwrap();
    assert!((volume.value * 1e6 - 0.46).abs() < 0.015, "{}", volume.value * 1e6);
    let acetone = burns(fluid("acetone"), reference()).unwrap();
    assert_eq!((acetone.category, acetone.class), (Some(2), "IB"));
    assert_eq!(rag(fluid("drying-oil"), reference()), Drying::Dries);
    assert_eq!(rag(fluid("slideway-68"), reference()), Drying::Not);
}

/// Acid and caustic, fluoride flux and acid stand in different cupboards (EPA-600/2-80-076); oils stand with oils.
#[test]
fn what_stands_apart() {
    let apart = |one: &str, other: &str| between(fluid(one), fluid(other), reference()).map_or(Apart::Together, |conflict| conflict.apart);
    assert_eq!(apart("battery-acid", "alkaline-degreaser"), Apart::Cupboards);
    assert_eq!(apart("fluoride-flux", "pickle-citric"), Apart::Cupboards);
    assert_eq!(apart("slideway-68", "spindle-10"), Apart::Together);
    let proposal = shelves(&["battery-acid", "alkaline-degreaser", "acetone", "slideway-68"].map(fluid), reference());
    let acid = proposal.iter().find(|shelf| shelf.fluids.contains(&"battery-acid".to_owned())).unwrap();
    assert_eq!(acid.height, Height::Bottom);
    let caustic = proposal.iter().find(|shelf| shelf.fluids.contains(&"alkaline-degreaser".to_owned())).unwrap();
    assert_ne!(acid.cupboard, caustic.cupboard);
    // The largest 5 L, 24 L in all: 6 L by British practice, 5 L by American (*from memory* of both).
    let litres = |litres: f64| Volume::from_base(litres * 1e-3);
    let [british, american] = tray(&[litres(5.0), litres(5.0), litres(5.0), litres(5.0), litres(4.0)]).unwrap();
    assert!((british.value * 1e3 - 6.0).abs() < 1e-9 && (american.value * 1e3 - 5.0).abs() < 1e-9);
    // Frost ruins what is mixed with water (*common practice*).
    let cold = spoiled(&[fluid("neutral-detergent"), fluid("slideway-68")], Temperature::from_base(270.0), Temperature::from_base(300.0));
    assert_eq!(cold.iter().map(|(fluid, _)| fluid.key.as_str()).collect::<Vec<_>>(), ["neutral-detergent"]);
}

/// Triethanolamine is a weak base (pKa 7.8, from memory of handbooks): with citric acid it makes no violent heat, with bleach chloramines.
#[test]
fn a_coolant_is_no_alkali() {
    let apart = |one: &str, other: &str| between(fluid(one), fluid(other), reference()).map_or(Apart::Together, |conflict| conflict.apart);
    for coolant in ["emulsion-concentrate", "semi-synthetic-concentrate", "tapping-paste"] {
        for acid in ["pickle-citric", "rust-remover", "battery-acid"] {
            assert!(apart(coolant, acid) < Apart::Cupboards, "{coolant} and {acid}");
        }
        assert_eq!(reference().apart(&fluid(coolant).hazards.storage, "bleach"), Apart::Cupboards, "{coolant}");
    }
}

/// NIOSH names no safe exposure to tetrachloroethylene (Pocket Guide, from memory): no smaller amount is called right.
#[test]
fn no_amount_of_what_may_cause_cancer_is_allowed() {
    let found = breathed("chlorinated-cleaner", &wiped(0.001, 0.1, 5.0), &garage(15.0)).unwrap();
    assert!(found.of_limit > 1.0);
    assert_eq!((found.amount_allowed, found.changes_needed), (None, None));
    let words = found.words(System::Metric);
    assert!(words.contains("take another fluid") && !words.contains("take at most"), "{words}");
}

/// Nitrite gives nitrous gas with acid and nitrosamines with the amines of a coolant (common practice, no source); a few per cent of it in
/// an oil are no nitrite.
#[test]
fn nitrite_stands_far_from_acid_and_from_coolant() {
    let conflict = |one: &str, other: &str| between(fluid(one), fluid(other), reference());
    for acid in ["pickle-citric", "rust-remover", "cold-blackening"] {
        assert_eq!(conflict("vapour-inhibitor", acid).unwrap().reaction, [Reaction::ToxicGas], "{acid}");
    }
    for coolant in ["emulsion-concentrate", "semi-synthetic-concentrate", "tapping-paste"] {
        let found = conflict("vapour-inhibitor", coolant).unwrap();
        assert!(found.apart == Apart::Cupboards && found.why.contains("never in or near the coolant"), "{coolant}");
    }
    assert!(conflict("preservative-oil", "pickle-citric").is_none_or(|found| found.apart < Apart::Cupboards));
}

/// What reacts alike stands on one side: EPA-600/2-80-076 (from memory), acids against alkali and against fluoride.
#[test]
fn each_side_of_a_conflict_holds_one_kind() {
    let place =
        Place { room: garage(0.3), coldest: Temperature::from_base(285.0), hottest: Temperature::from_base(303.0), units: System::Metric };
    let kept: Vec<Kept<'_>> = ["alkaline-degreaser", "battery-acid", "fluoride-flux", "pickle-citric"]
        .map(|key| Kept { fluid: fluid(key), pots: 1, amount: Volume::from_base(1e-3), used: None })
        .to_vec();
    let list = cautions(&kept, &place, reference());
    let sides: Vec<(&str, &str)> =
        list.iter().filter_map(|caution| caution.about.strip_prefix("keep apart: ")?.split_once(" | ")).collect();
    assert!(!sides.is_empty());
    for (one, other) in sides {
        let acids = ["battery", "citric"].map(|acid| (one.contains(acid), other.contains(acid)));
        assert!(acids.iter().all(|(left, right)| left != right), "{one} | {other}");
    }
}

/// What the trade never does; *common practice* beside the sources in the rules.
#[test]
fn bars_hold() {
    let nowhere = Beside::default();
    for key in ["chlorinated-cleaner", "petrol", "used-engine-oil", "hydrochloric-acid"] {
        assert!(bar(fluid(key), nowhere).is_some(), "{key}");
    }
    assert!(bar(fluid("acetone"), nowhere).is_none());
    assert!(bar(fluid("slideway-68"), Beside { oxygen: true, ..nowhere }).is_some());
    assert!(bar(fluid("alkaline-degreaser"), Beside { light_metal: true, ..nowhere }).is_some());
    assert!(bar(fluid("pickle-citric"), Beside { hard_steel: true, ..nowhere }).is_some());
    let mut whats: Vec<&str> = ALL.iter().map(|bar| bar.what).collect();
    whats.sort_unstable();
    whats.dedup();
    assert_eq!(whats.len(), ALL.len());
    for bar in ALL {
        assert!(reference().sources.contains_key(bar.source), "{}: {}", bar.what, bar.source);
    }
}

/// Every sentence has a source that stands in the bibliography, and the last defers to code and data sheet.
#[test]
fn cautions_defer() {
    let place =
        Place { room: garage(0.3), coldest: Temperature::from_base(270.0), hottest: Temperature::from_base(303.0), units: System::Metric };
    let kept: Vec<Kept<'_>> = ["acetone", "battery-acid", "alkaline-degreaser", "drying-oil", "slideway-68"]
        .map(|key| Kept { fluid: fluid(key), pots: 1, amount: Volume::from_base(1e-3), used: Some(wiped(1000.0, 1.0, 60.0)) })
        .to_vec();
    let list = cautions(&kept, &place, reference());
    assert!(list.iter().all(|caution| reference().sources.contains_key(caution.source.as_str())));
    assert!(list.last().unwrap().text.contains("local code and official guidance come first"));
    for about in ["keep apart", "fire", "air: acetone", "rags", "frost"] {
        assert!(list.iter().any(|caution| caution.about.starts_with(about)), "{about}: {list:#?}");
    }
}

/// What is said of fire where these stand: pots of a fluid, and litres in all of them.
fn of_fire(stock: &[(&str, usize, f64)], units: System) -> Option<String> {
    let place = Place { room: garage(0.3), coldest: Temperature::from_base(285.0), hottest: Temperature::from_base(303.0), units };
    let kept: Vec<Kept<'_>> = stock
        .iter()
        .map(|(key, pots, litres)| Kept { fluid: fluid(key), pots: *pots, amount: Volume::from_base(litres * 1e-3), used: None })
        .collect();
    let said = cautions(&kept, &place, reference()).into_iter().find(|caution| caution.about.starts_with("fire: "));
    said.map(|caution| caution.text)
}

/// A dozen spray cans may stand loose by the program's own rule (`house-aerosols`): thirteen of one spray are counted one by one.
#[test]
fn spray_cans_are_counted_by_the_can() {
    let said = |pots| of_fire(&[("brake-cleaner", pots, 0.4), ("slideway-68", 3, 5.0)], System::Metric).unwrap();
    assert!(said(13).contains("In all: 13 spray cans; that is more than may stand loose"), "{}", said(13));
    assert!(said(12).contains("In all: 12 spray cans; up to 5 L and 12 spray cans may stand loose"), "{}", said(12));
    // Cans count though nothing is known of how their contents flash.
    for spray in reference().fluids.values().filter(|fluid| fluid.traits.contains(&Trait::Aerosol)) {
        assert!(of_fire(&[(&spray.key, 1, 0.4)], System::Metric).unwrap().contains("In all: 1 spray can;"), "{}", spray.key);
    }
    // What is in a can is no liquid that stands there; amounts are in the reader's units.
    let both = of_fire(&[("ptfe-film", 2, 0.8), ("acetone", 2, 4.0)], System::Metric).unwrap();
    assert!(both.contains("2 spray cans and 4 L of flammable liquid;"), "{both}");
    assert!(of_fire(&[("acetone", 1, 3.785)], System::Inch).unwrap().contains("1 gal(US) of flammable"));
    assert!(of_fire(&[("slideway-68", 30, 150.0)], System::Metric).is_none());
}

/// Limits by the program's own rule (`house-cabinet`) and by the law for petrol (`uk-petrol-*`, from memory): above them nothing is stored
/// away, it is handed in.
#[test]
fn there_is_an_end_to_what_a_home_shop_holds() {
    let said = |litres| of_fire(&[("acetone", 20, litres), ("dearomatised-solvent", 1, 1.0)], System::Metric).unwrap();
    assert!(said(4.0).contains("up to 5 L"), "{}", said(4.0));
    assert!(said(20.0).contains("belongs in a metal cupboard"), "{}", said(20.0));
    let much = said(100.0);
    assert!(much.contains("101 L of flammable liquid; that is more than a home shop should hold, 25 L at most"), "{much}");
    assert!(much.contains("hand the rest in") && much.contains("ask your fire department"), "{much}");
    for litres in [1.0, 100.0] {
        assert!(said(litres).contains("None in the way out, in a basement or beside a boiler"), "{}", said(litres));
    }
    let place =
        Place { room: garage(0.3), coldest: Temperature::from_base(285.0), hottest: Temperature::from_base(303.0), units: System::Metric };
    let petrol = |litres: f64| {
        let kept = [Kept { fluid: fluid("petrol"), pots: 3, amount: Volume::from_base(litres * 1e-3), used: None }];
        cautions(&kept, &place, reference()).into_iter().find(|caution| caution.about == "petrol").unwrap().text
    };
    assert!(petrol(20.0).contains("of 10 L at most in plastic and 20 L in metal, 30 L in all") && !petrol(20.0).contains("hand it in"));
    assert!(petrol(40.0).contains("hand it in"), "{}", petrol(40.0));
}

fn any_fluid() -> impl Strategy<Value = &'static Fluid> {
    (0..reference().fluids.len()).prop_map(|place| reference().fluids.get_index(place).unwrap().1)
}

fn any_use() -> impl Strategy<Value = Use> {
    (1.0..2000.0_f64, 0.001..1.0_f64, 1.0..240.0_f64, 0..3_u8).prop_map(|(ml, m2, minutes, way)| {
        let area = Area::from_base(m2);
        let way = [Way::Tray(area), Way::Wiped(area), Way::Sprayed][usize::from(way)];
        Use { way, ..wiped(ml, m2, minutes) }
    })
}

proptest! {
    /// More ventilation never means more exposure.
    #[test]
    fn more_air_is_never_worse(fluid in any_fluid(), used in any_use(), changes in 0.1..5.0_f64, more in 0.0..10.0_f64) {
        let of = |changes: f64| exposure(fluid, &used, &garage(changes), reference()).unwrap().map_or(0.0, |found| found.of_limit);
        prop_assert!(of(changes + more) <= of(changes) * (1.0 + 1e-6) + 1e-9);
    }

    /// Less of it is never worse.
    #[test]
    fn less_is_never_worse(fluid in any_fluid(), used in any_use(), share in 0.01..1.0_f64) {
        let of = |used: &Use| exposure(fluid, used, &garage(0.5), reference()).unwrap().map_or(0.0, |found| found.of_limit);
        let less = Use { amount: used.amount * share, ..used };
        prop_assert!(of(&less) <= of(&used) * (1.0 + 1e-6) + 1e-9);
    }

    /// A conflict is the same from either side.
    #[test]
    fn conflicts_are_symmetric(one in any_fluid(), other in any_fluid()) {
        let (there, back) = (between(one, other, reference()), between(other, one, reference()));
        prop_assert_eq!(there.as_ref().map(|found| (found.apart, found.why)), back.as_ref().map(|found| (found.apart, found.why)));
    }

    /// No two on a proposed cupboard's shelves need cupboards of their own.
    #[test]
    fn a_proposal_keeps_apart(fluids in proptest::collection::vec(any_fluid(), 1..12)) {
        let proposal = shelves(&fluids, reference());
        for cupboard in 1..=proposal.iter().map(|shelf| shelf.cupboard).max().unwrap_or(0) {
            let there: Vec<&Fluid> = proposal.iter().filter(|shelf| shelf.cupboard == cupboard).flat_map(|shelf| &shelf.fluids).map(|key| fluid(key)).collect();
            prop_assert!(conflicts(&there, reference()).iter().all(|conflict| conflict.apart < Apart::Cupboards));
        }
    }

    /// Nothing that stands beside a fluid lifts a bar that holds without it.
    #[test]
    fn a_bar_cannot_be_lifted(fluid in any_fluid(), flags in proptest::collection::vec(any::<bool>(), 6)) {
        if bar(fluid, Beside::default()).is_some() {
            let beside = Beside { heat: flags[0], hot_part: flags[1], oxygen: flags[2], light_metal: flags[3], hard_steel: flags[4], coating: flags[5] };
            prop_assert!(bar(fluid, beside).is_some());
        }
    }
}

/// Locking and retaining compounds hold a per cent or two of a peroxide, which by CLP, Annex I, 2.15.2.1 makes no organic peroxide of them:
/// 2.5 % of cumene hydroperoxide (152.19 g/mol, one peroxy group) give 16·2.5/152 = 0.26 % of available oxygen, below 1 % (by hand). They all
/// stand on one shelf (*common practice*), and a shop that owns everything needs a handful of cupboards.
#[test]
fn a_shop_that_owns_everything_needs_a_handful_of_cupboards() {
    let fluids: Vec<&Fluid> = reference().fluids.values().filter(|fluid| !fluid.always_there && fluid.barred.is_none()).collect();
    let proposal = shelves(&fluids, reference());
    let of = |key: &str| proposal.iter().find(|shelf| shelf.fluids.iter().any(|there| there == key)).map(|shelf| shelf.cupboard).unwrap();
    let anaerobics: Vec<usize> =
        fluids.iter().filter(|fluid| fluid.traits.contains(&Trait::Anaerobic)).map(|fluid| of(&fluid.key)).collect();
    assert!(anaerobics.len() > 8 && anaerobics.iter().all(|cupboard| *cupboard == anaerobics[0]), "{anaerobics:?}");
    let cupboards = proposal.iter().map(|shelf| shelf.cupboard).max().unwrap();
    assert!((2..=5).contains(&cupboards), "{cupboards}: {proposal:#?}");
    // Acid does not stand in the metal cupboard of what burns; *common practice*.
    assert_ne!(of("battery-acid"), of("acetone"));
}
