//! A shop file is read, or every problem has a place in it; what is read can be worked out, or says why not.
#![no_main]

use libfuzzer_sys::fuzz_target;
use planner::needs::{Working, kinds, needs};
use reference::Reference;
use shop::Problem;

fuzz_target!(|file: &[u8]| {
    let reference = Reference::embedded();
    let shop = match shop::read(file, kinds(), reference) {
        Ok(shop) => shop,
        Err(problems) => return check(&problems, file),
    };
    if let Err(problems) = needs(&shop, reference, Working::Dropped) {
        check(&problems, file);
    }
});

fn check(problems: &[Problem], file: &[u8]) {
    assert!(!problems.is_empty());
    for problem in problems {
        assert!(!problem.what.is_empty() && !problem.mend.is_empty(), "{problem:?}");
        assert!(problem.at.as_ref().is_none_or(|at| file.get(at.clone()).is_some()), "{problem:?}");
    }
}
