//! Machines, point by point or grown from a template.

use std::collections::BTreeMap;

use reference::{Reference, Template};
use units::{Dimension, Usage, parse_any};

use crate::assumption::Assumptions;
use crate::point::{Inherited, Point};
use crate::problem::{Problems, Span};
use crate::section::{Said, Section};
use fields::Kind;
use fields::did_you_mean;

/// A machine tool or engine.
#[derive(Debug, Clone)]
pub struct Machine {
    /// What the user calls it.
    pub name: String,
    /// The template it was grown from.
    pub template: Option<String>,
    /// How much of the time it runs.
    pub hours: Usage,
    /// Its points, in the order of a walk round it.
    pub points: Vec<Point>,
    /// Where it stands in the file.
    pub at: Span,
}

/// What every machine of the shop shares.
pub(crate) struct Around<'a> {
    pub reference: &'a Reference,
    pub kinds: &'a [&'static Kind],
    pub damp: bool,
    pub hours: Usage,
}

impl Machine {
    /// Reads one `[[machine]]`.
    pub(crate) fn read(mut section: Section<'_>, around: &Around<'_>, assumed: &mut Assumptions, problems: &mut Problems) -> Self {
        let template = read_template(&mut section, around.reference, problems);
        let name = section.text("name", problems).map(|said| said.value);
        let name = name.or_else(|| template.map(|template| template.name.clone())).unwrap_or_else(|| "machine".to_owned());
        if template.is_none() && !section.has("point") && !section.has("template") {
            problems.add(
                section.at.clone(),
                format!("`{name}` has neither a template nor points"),
                format!("Give it a `template` ({}), or list its points as `[[machine.point]]`.", some_templates(around.reference)),
            );
        }
        let hours = section.quantity("hours", problems).map(|said: Said<Usage>| said.value);
        let hours = hours.unwrap_or_else(|| {
            assumed.add(&name, "hours", units::show(around.hours, assumed.units), "common-practice");
            around.hours
        });
        let sizes = read_sizes(template, &name, &mut section, assumed, problems);
        let size = |word: &str| sizes.get(word).copied();
        let without = section.words("without", problems);
        let mut written = read_written(&mut section, problems);
        let inherited = Inherited {
            machine: &name,
            hours,
            damp: around.damp,
            template: None,
            template_source: template.map_or("common-practice", |template| template.source.as_str()),
            size: &size,
        };
        let mut points = Vec::new();
        for part in template.iter().flat_map(|template| &template.points) {
            if without.iter().any(|said| said.value == part.name) {
                continue;
            }
            let own = written.iter().position(|(name, _)| *name == part.name).map(|found| written.remove(found).1);
            let mut own = own.unwrap_or_else(|| Section::empty(section.at.clone()));
            let kind = read_kind(&mut own, Some(&part.kind), around.kinds, problems);
            let Some(kind) = kind else { continue };
            let inherited = Inherited { template: Some(part), ..inherited };
            points.push(Point::read(part.name.clone(), kind, own, &inherited, around.reference, assumed, problems));
        }
        for (name, mut own) in written {
            let Some(kind) = read_kind(&mut own, None, around.kinds, problems) else { continue };
            points.push(Point::read(name, kind, own, &inherited, around.reference, assumed, problems));
        }
        let names = || template.iter().flat_map(|template| template.points.iter().map(|part| part.name.as_str()));
        for said in without.iter().filter(|said| !names().any(|name| name == said.value)) {
            problems.add(
                said.at.clone(),
                format!("the template has no point `{}` to leave out", said.value),
                did_you_mean(&said.value, names()),
            );
        }
        let at = section.at.clone();
        section.close(problems);
        Self { name, template: template.map(|template| template.name.clone()), hours, points, at }
    }
}

fn read_template<'r>(section: &mut Section<'_>, reference: &'r Reference, problems: &mut Problems) -> Option<&'r Template> {
    let said = section.text("template", problems)?;
    let known = || reference.templates.keys().map(String::as_str);
    let found = reference.meant(&said.value, known()).and_then(|meant| reference.template(meant));
    if found.is_none() {
        problems.add(said.at, format!("`{}` is not a template known here", said.value), did_you_mean(&said.value, known()));
    }
    found
}

fn some_templates(reference: &Reference) -> String {
    reference.templates.keys().take(4).map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")
}

/// The template's sizes: the user's, else the template's own.
fn read_sizes(
    template: Option<&Template>,
    name: &str,
    section: &mut Section<'_>,
    assumed: &mut Assumptions,
    problems: &mut Problems,
) -> BTreeMap<String, f64> {
    let mut sizes = BTreeMap::new();
    let Some(template) = template else { return sizes };
    for (size, text) in &template.sizes {
        let Some((dimension, supposed)) = recognise(text) else {
            unreachable!("size `{size}` of `{}` is proved readable by a test", template.name)
        };
        let said = section.base(size, dimension, text, problems);
        if let Some(said) = said.as_ref().filter(|said| said.value <= 0.0) {
            problems.add(said.at.clone(), format!("`{size}` is zero"), format!("Give {} above zero.", dimension.name()));
        }
        let value = said.filter(|said| said.value > 0.0).map_or_else(
            || {
                assumed.add(name, size, units::show_base(dimension, supposed, assumed.units), template.source.as_str());
                supposed
            },
            |said| said.value,
        );
        sizes.insert(size.clone(), value);
    }
    sizes
}

/// The kind of quantity a size is, by its unit: sizes are lengths, pressures and powers.
fn recognise(text: &str) -> Option<(Dimension, f64)> {
    Dimension::ALL.iter().find_map(|dimension| Some((*dimension, parse_any(*dimension, text).ok()?)))
}

/// The points written in the file by name; a second point of the same name is reported and dropped.
fn read_written<'t>(section: &mut Section<'t>, problems: &mut Problems) -> Vec<(String, Section<'t>)> {
    let mut written: Vec<(String, Section<'t>)> = Vec::new();
    for mut own in section.sections("point", problems) {
        let Some(name) = own.text("name", problems) else {
            if !own.has("name") {
                problems.add(own.at.clone(), "a point has no name", "Give it a `name`; it is what the chart will call it.");
            }
            continue;
        };
        if written.iter().any(|(other, _)| *other == name.value) {
            problems.add(name.at, format!("two points of this machine are called `{}`", name.value), "Give one of them another name.");
            continue;
        }
        written.push((name.value, own));
    }
    written
}

fn read_kind(
    section: &mut Section<'_>,
    from_template: Option<&str>,
    kinds: &[&'static Kind],
    problems: &mut Problems,
) -> Option<&'static Kind> {
    let of = |word: &str| kinds.iter().find(|kind| kind.name == word).copied();
    let Some(said) = section.text("kind", problems) else {
        if from_template.is_none() && !section.has("kind") {
            problems.add(section.at.clone(), "a point has no kind", did_you_mean("", kinds.iter().map(|kind| kind.name)));
        }
        return from_template.and_then(of);
    };
    let found = of(&said.value);
    if found.is_none() {
        problems.add(
            said.at,
            format!("`{}` is not a kind of point", said.value),
            did_you_mean(&said.value, kinds.iter().map(|kind| kind.name)),
        );
    }
    found
}
