//! The data compiled in are readable, complete and fit together.

use reference::Reference;

#[test]
fn the_data_are_readable() {
    let reference = Reference::embedded();
    assert!(reference.fluids.len() >= 80, "only {} fluids", reference.fluids.len());
}
