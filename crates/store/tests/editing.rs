//! Forms change the description, and cannot spoil it.

mod support;

use planner::needs::kinds;
use reference::Reference;
use store::{Change, Entry, SectionId, StoreError, Value, What, Written};
use support::{Home, SHOP, amount, day, faults, moment, text};

fn edit(home: &mut Home, changes: &[Change]) -> Result<Vec<SectionId>, StoreError> {
    home.store.edit(changes, Reference::embedded(), kinds(), moment(10))
}

fn say(section: SectionId, key: &str, value: Value) -> Change {
    Change::Say { section, key: key.to_owned(), value }
}

#[test]
fn what_is_said_stands_where_it_stood_and_the_rest_is_untouched() {
    let mut home = Home::of(SHOP);
    let (lathe, room) = (home.machine("lathe"), home.store.section(SectionId::WHOLE).unwrap().inside[0]);
    edit(&mut home, &[say(lathe, "name", text("old lathe")), say(room, "volume", text("35 m3"))]).unwrap();
    assert_eq!(home.store.export().unwrap(), SHOP.replace("\"lathe\"", "\"old lathe\"").replace("\"30 m3\"", "\"35 m3\""));
    assert_eq!(home.machine("old lathe"), lathe);
}

#[test]
fn a_bad_value_is_refused_at_its_section_and_key_and_nothing_is_written() {
    let mut home = Home::of(SHOP);
    let (lathe, pot) = (home.machine("lathe"), home.pot("penetrating"));
    let changes = [say(lathe, "swing", text("10 in")), say(lathe, "hours", text("often")), say(pot, "opened", text("spring"))];
    let faults = faults(edit(&mut home, &changes));
    let places: Vec<_> = faults.iter().map(|fault| (fault.section, fault.key.as_deref())).collect();
    assert_eq!(places, [(Some(lathe), Some("hours")), (Some(pot), Some("opened"))]);
    assert_eq!(home.store.export().unwrap(), SHOP);
}

#[test]
fn an_unknown_key_and_a_number_that_is_none_are_refused() {
    let mut home = Home::of(SHOP);
    let lathe = home.machine("lathe");
    let point = home.described().point(lathe, "steady").unwrap();
    assert_eq!(faults(edit(&mut home, &[say(lathe, "colour = 1\n[[machine]]", text("green"))])).len(), 1);
    let faults = faults(edit(&mut home, &[say(point, "count", Value::Number("two".to_owned()))]));
    assert_eq!((faults[0].section, faults[0].key.as_deref()), (Some(point), Some("count")));
}

#[test]
fn a_new_section_that_is_unsound_is_told_by_the_change_that_adds_it() {
    let mut home = Home::of(SHOP);
    let add = |fluid: &str| Change::Add { parent: SectionId::WHOLE, kind: "pot".to_owned(), says: vec![("fluid".to_owned(), text(fluid))] };
    let faults = faults(edit(&mut home, &[add("slideway-68"), add("unobtainium")]));
    assert_eq!((faults[0].change, faults[0].key.as_deref()), (Some(1), Some("fluid")));
    let added = edit(&mut home, &[add("slideway-68")]).unwrap();
    assert_eq!(home.store.section(added[0]).unwrap().name(), "slideway-68");
}

#[test]
fn a_shop_can_be_described_from_nothing_and_its_last_machine_cannot_go() {
    let mut home = Home::empty();
    let says = vec![("volume".to_owned(), text("30 m3"))];
    edit(&mut home, &[Change::Add { parent: SectionId::WHOLE, kind: "room".to_owned(), says }]).unwrap();
    let says = vec![("template".to_owned(), text("bench lathe"))];
    let added = edit(&mut home, &[Change::Add { parent: SectionId::WHOLE, kind: "machine".to_owned(), says }]).unwrap();
    assert_eq!(home.described().shop.machines.len(), 1);
    assert_eq!(faults(edit(&mut home, &[Change::Remove { section: added[0] }])).len(), 1);
}

#[test]
fn a_maker_is_added_in_the_line_of_its_point() {
    let mut home = Home::of(SHOP);
    let lathe = home.machine("lathe");
    let point = home.described().point(lathe, "steady").unwrap();
    let says = vec![("every".to_owned(), text("500 h"))];
    let maker = edit(&mut home, &[Change::Add { parent: point, kind: "maker".to_owned(), says }]).unwrap()[0];
    assert!(home.store.export().unwrap().contains("maker = { every = \"500 h\" }\n"));
    assert_eq!(faults(edit(&mut home, &[say(maker, "every", text("5 min"))])).len(), 1);
}

#[test]
fn sections_change_places() {
    let mut home = Home::of(SHOP);
    let (lathe, mill) = (home.machine("lathe"), home.machine("mill"));
    edit(&mut home, &[Change::Move { section: mill, before: Some(lathe) }]).unwrap();
    let names: Vec<String> = home.described().shop.machines.iter().map(|machine| machine.name.clone()).collect();
    assert_eq!(names, ["mill", "lathe"]);
    edit(&mut home, &[Change::Move { section: mill, before: None }]).unwrap();
    assert_eq!(home.described().shop.machines[0].name, "lathe");
}

#[test]
fn the_log_still_knows_what_was_taken_out() {
    let mut home = Home::of(SHOP);
    let lathe = home.machine("lathe");
    let point = home.described().point(lathe, "steady").unwrap();
    let entry = Entry::new(moment(1), What::Applied { point, pot: None, amount: None });
    let id = home.store.write(&entry).unwrap().logged().id;
    edit(&mut home, &[Change::Remove { section: lathe }]).unwrap();
    let row = home.store.section(point).unwrap();
    assert!(row.gone && home.store.section(lathe).unwrap().gone);
    assert_eq!((row.name().as_str(), home.store.entry(id).unwrap().entry.what), ("steady", entry.what));
    assert!(matches!(edit(&mut home, &[say(point, "name", text("x"))]), Err(StoreError::NoSection { .. })));
}

#[test]
fn a_template_s_point_has_a_number_once_the_log_or_a_form_speaks_of_it() {
    let mut home = Home::of(SHOP);
    let mill = home.machine("mill");
    let name = home.described().shop.machines[1].points[0].name.clone();
    assert_eq!(home.described().point(mill, &name), None);
    let point = home.store.point(mill, &name).unwrap();
    assert_eq!(home.store.point(mill, &name).unwrap(), point);
    assert_eq!(home.store.export().unwrap(), SHOP);
    // The file taken in again leaves it; a form that adds the point by name means the same one.
    home.store.import(SHOP.as_bytes(), Reference::embedded(), kinds(), moment(2)).unwrap();
    assert_eq!(home.described().point(mill, &name), Some(point));
    let says = vec![("name".to_owned(), text(&name)), ("priority".to_owned(), text("high"))];
    assert_eq!(edit(&mut home, &[Change::Add { parent: mill, kind: "point".to_owned(), says }]).unwrap(), [point]);
    let exported = home.store.export().unwrap();
    assert!(exported.contains("priority = \"high\""), "{exported}");
    // What was said about it is taken out: the template's point is still there, and the same.
    edit(&mut home, &[Change::Remove { section: point }]).unwrap();
    assert_eq!((home.store.export().unwrap().as_str(), home.described().point(mill, &name)), (SHOP, Some(point)));
}

#[test]
fn what_is_said_to_be_left_is_a_count_once_the_log_speaks_of_the_pot() {
    let mut home = Home::of(SHOP);
    let pot = home.pot("slideway-68");
    edit(&mut home, &[say(pot, "left", text("900 mL"))]).unwrap();
    assert!(home.store.log(store::Page { count: 9, ..store::Page::default() }).unwrap().is_empty());
    home.store.write(&Entry::new(moment(5), What::Discarded { pot, amount: Some(amount("100 mL")) })).unwrap();
    assert_eq!(home.left(pot).as_deref(), Some("800 mL"));
    edit(&mut home, &[say(pot, "left", text("700 mL"))]).unwrap();
    assert_eq!(home.left(pot).as_deref(), Some("700 mL"));
    let last = home.store.log(store::Page { count: 1, ..store::Page::default() }).unwrap();
    assert_eq!(last[0].entry.what, What::Counted { pot, left: amount("700 mL") });
    assert_eq!(faults(edit(&mut home, &[say(pot, "left", text("some"))]))[0].key.as_deref(), Some("left"));
}

#[test]
fn a_file_that_was_exported_and_taken_in_counts_nothing_twice() {
    let mut home = Home::of(SHOP);
    let pot = home.pot("slideway-68");
    home.store.write(&Entry::new(moment(1), What::Discarded { pot, amount: Some(amount("100 mL")) })).unwrap();
    home.store.write(&Entry::new(moment(2), What::Opened { pot })).unwrap();
    let exported = home.store.export().unwrap();
    assert!(exported.contains("left = \"900 mL\"\nopened = 2026-03-02\n"), "{exported}");
    home.store.import(exported.as_bytes(), Reference::embedded(), kinds(), moment(3)).unwrap();
    assert_eq!(home.store.export().unwrap(), exported);
    assert_eq!(home.store.log(store::Page { count: 9, ..store::Page::default() }).unwrap().len(), 2);
    home.store.write(&Entry::new(moment(4), What::Discarded { pot, amount: Some(amount("100 mL")) })).unwrap();
    assert_eq!(home.left(pot).as_deref(), Some("800 mL"));
}

#[test]
fn a_day_of_opening_put_right_stands_instead_of_the_log_s() {
    let mut home = Home::of(SHOP);
    let pot = home.pot("slideway-68");
    let Written::New(opened) = home.store.write(&Entry::new(moment(2), What::Opened { pot })).unwrap() else { unreachable!() };
    edit(&mut home, &[say(pot, "opened", Value::Date(day("2026-02-20")))]).unwrap();
    assert_eq!(home.described().shop.pots[0].opened, Some(day("2026-02-20")));
    assert!(home.store.entry(opened.id).unwrap().undone_by.is_some());
    edit(&mut home, &[Change::Unsay { section: pot, key: "opened".to_owned() }]).unwrap();
    assert_eq!(home.described().shop.pots[0].opened, None);
}
