//! Every sheet of the bench, asked anything: it answers with numbers, or says why not.
#![no_main]

use bench::{read, sheets};
use fuzz::made_up::answers;
use libfuzzer_sys::arbitrary::Unstructured;
use libfuzzer_sys::fuzz_target;
use reference::Reference;
use units::System;

fuzz_target!(|bytes: &[u8]| {
    let (reference, mut bytes) = (Reference::embedded(), Unstructured::new(bytes));
    let Ok(sheet) = bytes.choose(sheets()) else { return };
    let Ok(said) = answers(&mut bytes, sheet.kind.fields, reference) else { return };
    let given: Vec<(&str, &str)> = said.iter().map(|(name, text)| (*name, text.as_str())).collect();
    let Ok(reply) = read(sheet, &given, reference) else { return };
    let name = sheet.kind.name;
    let page = match sheet.work(&reply, reference, System::Both) {
        Ok(page) => page,
        Err(why) => {
            let (why, said) = (why.to_string(), given.iter().any(|(_, text)| text.contains("NaN")));
            assert!(!why.is_empty() && (said || !why.contains("NaN")), "{name} {given:?}: {why}");
            return;
        }
    };
    for answer in &page.answers {
        // Three ways to the same number may end a last digit apart.
        let hair = 1e-9 * answer.likely.abs();
        assert!(answer.low <= answer.likely + hair && answer.likely <= answer.high + hair, "{name} {given:?}: {answer:?}");
        assert!([answer.low, answer.likely, answer.high].iter().all(|number| number.is_finite()), "{name} {given:?}: {answer:?}");
    }
    for step in &page.steps {
        assert!(step.value.is_finite(), "{name} {given:?}: {step:?}");
    }
    if let Some(Err(error)) = page.svg() {
        panic!("{name} {given:?}: {error}");
    }
});
