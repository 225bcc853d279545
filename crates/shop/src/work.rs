//! The work done in the shop.

use indexmap::IndexMap;
use reference::Reference;
use units::{Frequency, System};

use crate::answers::{Source, read_answers};
use crate::assumption::Assumptions;
use crate::machine::Machine;
use crate::point::{PRIORITIES, Priority};
use crate::problem::{Problems, Span};
use crate::section::Section;
use fields::did_you_mean;
use fields::{Answers, Kind};

/// A piece of work that calls for fluids.
#[derive(Debug, Clone)]
pub struct Job {
    /// What the user calls it.
    pub name: String,
    /// What kind of work it is.
    pub kind: &'static Kind,
    /// Sizes, materials and the like.
    pub answers: Answers,
    /// How often it is done.
    pub often: Frequency,
    /// Whether the user raised or lowered it.
    pub priority: Priority,
    /// Where it stands in the file.
    pub at: Span,
}

impl Job {
    /// Reads one `[[work]]`.
    pub(crate) fn read(
        mut section: Section<'_>,
        kinds: &[&'static Kind],
        reference: &Reference,
        assumed: &mut Assumptions,
        problems: &mut Problems,
    ) -> Option<Self> {
        let name = section.text("name", problems).map(|said| said.value);
        let Some(said) = section.text("job", problems) else {
            if !section.has("job") {
                problems.add(section.at.clone(), "this work has no `job`", did_you_mean("", kinds.iter().map(|kind| kind.name)));
            }
            return None;
        };
        let meant = reference.meant(&said.value, kinds.iter().map(|kind| kind.name));
        let Some(kind) = kinds.iter().find(|kind| Some(kind.name) == meant).copied() else {
            problems.add(
                said.at,
                format!("`{}` is not a kind of job", said.value),
                did_you_mean(&said.value, kinds.iter().map(|kind| kind.name)),
            );
            return None;
        };
        let name = name.unwrap_or_else(|| kind.name.to_owned());
        let answers = read_answers(kind, &mut section, &Source::NONE, &name, reference, assumed, problems);
        let often = section.quantity("often", problems).map(|said| said.value);
        let often = often.unwrap_or_else(|| {
            let monthly = units::parse("12 /year").unwrap_or_else(|_| unreachable!("a frequency as people write it"));
            assumed.add(&name, "often", units::show::<Frequency>(monthly, System::Metric), "common-practice");
            monthly
        });
        let priority = section.choice("priority", PRIORITIES, problems).map_or(Priority::Normal, |said| said.value);
        let at = section.at.clone();
        section.close(problems);
        Some(Self { name, kind, answers, often, priority, at })
    }
}

/// The work supposed of a shop that tells of none: cutting common metals in the ways its machines cut.
pub(crate) fn supposed(
    machines: &[Machine],
    kinds: &[&'static Kind],
    reference: &Reference,
    assumed: &mut Assumptions,
    problems: &mut Problems,
) -> Option<Job> {
    const METALS: &str = "mild-steel, aluminium, brass";
    let kind = kinds.iter().find(|kind| kind.name == "cut").copied()?;
    let templates = machines.iter().filter_map(|machine| reference.template(machine.template.as_deref()?));
    let mut operations: Vec<&str> = Vec::new();
    for operation in templates.flat_map(|template| &template.operations) {
        if !operations.contains(&operation.word()) {
            operations.push(operation.word());
        }
    }
    if operations.is_empty() {
        return None;
    }
    let values = IndexMap::from([("materials".to_owned(), METALS.to_owned()), ("operations".to_owned(), operations.join(", "))]);
    let source = Source { values: Some(&values), ..Source::NONE };
    let name = "cutting".to_owned();
    let mut section = Section::empty(0..0);
    let answers = read_answers(kind, &mut section, &source, &name, reference, assumed, problems);
    let often = units::parse("weekly").unwrap_or_else(|_| unreachable!("a frequency as people write it"));
    assumed.add(&name, "often", units::show::<Frequency>(often, System::Metric), "common-practice");
    Some(Job { name, kind, answers, often, priority: Priority::Normal, at: 0..0 })
}
