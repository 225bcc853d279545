//! A shop file goes in and comes out again.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod support;

use planner::needs::kinds;
use proptest::prelude::*;
use reference::Reference;
use support::{Home, SHOP, moment};

fn through(text: &str) -> String {
    Home::of(text).store.export().unwrap()
}

#[test]
fn every_example_comes_back_as_it_was_byte_for_byte() {
    let folder = format!("{}/../../examples", env!("CARGO_MANIFEST_DIR"));
    let mut seen = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let text = std::fs::read_to_string(entry.unwrap().path()).unwrap();
        assert_eq!(through(&text), text);
        seen += 1;
    }
    assert!(seen >= 4);
}

#[test]
fn comments_and_blanks_stay_where_they_stood() {
    assert_eq!(through(SHOP), SHOP);
    let odd =
        "\n\n# first\nname='x'#tail\navoid = [ # why\n  \"chlorinated-cleaner\",\n]\n[[machine]] # one\ntemplate=\"bench lathe\"\n# end";
    let once = through(odd);
    assert!(["# first", "#tail", "# why", "# one", "# end"].iter().all(|comment| once.contains(comment)), "{once}");
    assert_eq!(through(&once), once);
}

#[test]
fn other_ways_to_write_a_section_say_the_same() {
    let text = "work = [{ job = \"mark\", often = \"weekly\" }, { job = \"clean\" }]\nroom.volume = \"30 m3\"\n\
        [[machine]]\nname = \"m\"\npoint = [{ name = \"p\", kind = \"instrument pivot\", diameter = \"1 mm\", maker.every = \"500 h\" }]\n";
    let once = through(text);
    // The TOML library says what a text means.
    let meaning = |text: &str| toml::from_str::<toml::Table>(text).unwrap();
    assert_eq!(meaning(&once), meaning(text), "{once}");
    assert_eq!(through(&once), once);
}

#[test]
fn the_same_file_again_keeps_every_number_and_changes_nothing() {
    let mut home = Home::of(SHOP);
    let (lathe, pot) = (home.machine("lathe"), home.pot("penetrating"));
    let done = home.store.import(SHOP.as_bytes(), Reference::embedded(), kinds(), moment(1)).unwrap();
    assert_eq!((done.kept, done.added, done.gone), (7, 0, 0));
    assert_eq!((home.machine("lathe"), home.pot("penetrating")), (lathe, pot));
    assert_eq!(home.store.export().unwrap(), SHOP);
}

/// Words with whatever people type, and what a file format stumbles over.
fn words() -> impl Strategy<Value = String> {
    prop_oneof!["[a-z ]{1,12}", "[\"'\\\\#=\\[\\]{}\n\té€]{1,6}", "\\PC{0,8}"]
}

fn comment() -> impl Strategy<Value = String> {
    prop_oneof![Just(String::new()), "[a-z\"'=\\[# ]{0,12}".prop_map(|text| format!("# {text}\n")), Just("\n".to_owned())]
}

fn quoted(text: &str) -> String {
    store::Value::Text(text.to_owned()).to_toml()
}

prop_compose! {
    fn pot()(
        above in comment(),
        fluid in prop::sample::select(Reference::embedded().fluids.keys().map(ToString::to_string).collect::<Vec<_>>()),
        name in prop::option::of(words()),
        left in prop::option::of(0_u32..5000),
        days in prop::option::of(1_u32..28),
        lot in prop::option::of(words()),
    ) -> String {
        let mut text = format!("{above}[[pot]]\nfluid = \"{fluid}\"\n");
        let lines = [
            name.map(|name| format!("name = {}", quoted(&name))),
            left.map(|left| format!("left = \"{left} mL\" # by eye")),
            days.map(|day| format!("opened = 2026-03-{day:02}")),
            lot.map(|lot| format!("  lot = {}", quoted(&lot))),
        ];
        for line in lines.into_iter().flatten() {
            text.push_str(&line);
            text.push('\n');
        }
        text
    }
}

prop_compose! {
    fn machine()(
        above in comment(),
        template in prop::sample::select(vec!["bench lathe", "bench mill", "drill press"]),
        pivots in prop::collection::vec((comment(), 1_u32..30, any::<bool>()), 0..3),
    ) -> String {
        let mut text = format!("{above}[[machine]]\ntemplate = \"{template}\"\n");
        for (number, (above, tenths, maker)) in pivots.into_iter().enumerate() {
            text.push_str(&format!("{above}[[machine.point]]\nname = \"pivot {number}\"\nkind = \"instrument pivot\"\ndiameter = \"0.{tenths} mm\"\n"));
            if maker {
                text.push_str("maker = { every = \"500 h\", page = \"12\" }\n");
            }
        }
        text
    }
}

prop_compose! {
    fn description()(
        top in comment(),
        name in words(),
        machines in prop::collection::vec(machine(), 1..4),
        pots in prop::collection::vec(pot(), 0..5),
        last in comment(),
    ) -> String {
        let machines: Vec<String> = machines.iter().enumerate()
            .map(|(number, text)| text.replacen("]]\n", &format!("]]\nname = \"machine {number}\"\n"), 1)).collect();
        format!("{top}name = {}\n{}{}{last}", quoted(&name), machines.concat(), pots.concat())
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_described_comes_back(text in description()) {
        let once = through(&text);
        // The TOML library says what a text means.
        prop_assert_eq!(toml::from_str::<toml::Table>(&once).unwrap(), toml::from_str::<toml::Table>(&text).unwrap());
        prop_assert_eq!(&once, &text);
        prop_assert_eq!(through(&once), once);
    }
}
