//! A sheet as a form.

use bench::{Refusal, Sheet};
use fields::{Asks, Field};
use reference::Reference;
use units::System;

use super::{Control, fits, hint, input, said};
use crate::visitor::Visitor;
use crate::words::{quoted, sentence};

/// The fields a page asks. A file is no answer to a form that can be bookmarked, and a visitor must not name one for the server to read.
fn asked(sheet: &Sheet) -> impl Iterator<Item = &'static Field> {
    sheet.kind.fields.iter().filter(|field| !matches!(field.asks, Asks::File))
}

/// What was typed, by field; ticked words are joined by commas.
pub(crate) fn typed(sheet: &Sheet, visitor: &Visitor) -> Vec<(&'static str, String)> {
    let one = |field: &Field| {
        let all: Vec<&str> = visitor.all(field.name).collect();
        (!all.is_empty()).then(|| (field.name, all.join(", ")))
    };
    asked(sheet).filter_map(one).collect()
}

/// The form's fields.
pub(crate) fn controls(
    sheet: &Sheet,
    typed: &[(&'static str, String)],
    refused: &[Refusal],
    reference: &Reference,
    units: System,
) -> Vec<Control> {
    let control = |field| control(field, typed, refused, reference, units);
    asked(sheet).map(control).collect()
}

fn control(field: &Field, typed: &[(&'static str, String)], refused: &[Refusal], reference: &Reference, units: System) -> Control {
    let value = typed.iter().find(|(name, _)| *name == field.name).map_or("", |(_, value)| value.as_str());
    let empty = if field.default.is_empty() { "–".to_owned() } else { format!("as supposed: {}", field.default) };
    Control {
        name: field.name.to_owned(),
        label: quoted(&sentence(field.about)),
        hint: hint(fits(field.asks), &field.supposed(units)),
        source: field.source.to_owned(),
        required: field.is_required(),
        wrong: refused.iter().find(|refusal| refusal.field == field.name).map(|found| said(field.name, &found.what, &found.mend)),
        input: input(field.asks, value, &empty, reference),
    }
}
