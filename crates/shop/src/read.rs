//! From the bytes of a file to a shop, or to everything that is wrong with it.

use reference::Reference;
use toml::de::DeTable;
use units::{System, Usage};

use crate::Shop;
use crate::assumption::Assumptions;
use crate::machine::{Around, Machine};
use crate::point::fluid_or_class;
use crate::pot::Pot;
use crate::problem::{Problem, Problems};
use crate::room::{Heating, Room};
use crate::section::{Said, Section};
use crate::work::{Job, supposed};
use fields::Kind;
use fields::did_you_mean;

/// The kinds a file may name; the planner knows them.
#[derive(Debug, Clone, Copy)]
pub struct Kinds<'a> {
    /// Kinds of lubrication point.
    pub points: &'a [&'static Kind],
    /// Kinds of job.
    pub jobs: &'a [&'static Kind],
}

/// Largest shop file that is read: a shop of hundreds of machines is a tenth of it.
pub const LARGEST_BYTES: usize = 4 << 20;

pub(crate) const SYSTEMS: &[(&str, System)] = &[("metric", System::Metric), ("inch", System::Inch), ("both", System::Both)];

/// Reads a shop file.
///
/// # Errors
/// Every problem found, in the order of the file; then there is no shop.
pub fn read(bytes: &[u8], kinds: Kinds<'_>, reference: &Reference) -> Result<Shop, Vec<Problem>> {
    read_up_to(LARGEST_BYTES, bytes, kinds, reference)
}

/// Reads a shop file that may be longer or must be shorter than others, for whoever knows where it comes from.
///
/// # Errors
/// Every problem found, in the order of the file; then there is no shop.
pub fn read_up_to(largest: usize, bytes: &[u8], kinds: Kinds<'_>, reference: &Reference) -> Result<Shop, Vec<Problem>> {
    let mut problems = Problems::default();
    let mut assumed = Assumptions::default();
    if bytes.len() > largest {
        let (megabytes, most) = (bytes.len() >> 20, largest >> 20);
        problems.add(
            None,
            format!("the file is {megabytes} MiB long; a shop file has {most} MiB at most"),
            "Check that this is the file you meant.",
        );
        return Err(problems.into_sorted());
    }
    let text = match std::str::from_utf8(bytes) {
        Ok(text) => text,
        Err(error) => {
            let at = error.valid_up_to();
            problems.add(
                None,
                format!("the file is not text: byte {at} is no UTF-8"),
                "Give a shop file as text in TOML form, saved as UTF-8.",
            );
            return Err(problems.into_sorted());
        }
    };
    let (table, syntax) = DeTable::parse_recoverable(text);
    for error in &syntax {
        problems.add(error.span(), error.message().to_owned(), "This is not TOML; see the examples for how a line is written.");
    }
    if !syntax.is_empty() {
        return Err(problems.into_sorted());
    }
    let shop = read_shop(Section::new(table.get_ref(), 0..0), kinds, reference, &mut assumed, &mut problems);
    if problems.is_empty() { Ok(Shop { assumptions: assumed.into_vec(), ..shop }) } else { Err(problems.into_sorted()) }
}

fn read_shop(
    mut section: Section<'_>,
    kinds: Kinds<'_>,
    reference: &Reference,
    assumed: &mut Assumptions,
    problems: &mut Problems,
) -> Shop {
    let name = section.text("name", problems).map_or_else(|| "the shop".to_owned(), |said| said.value);
    let units = section.choice("units", SYSTEMS, problems).map_or_else(
        || {
            assumed.add("shop", "units", "metric", "common-practice");
            System::Metric
        },
        |said| said.value,
    );
    assumed.units = units;
    let currency = read_currency(&mut section, reference, assumed, problems);
    let avoid = section.words("avoid", problems).into_iter().filter_map(|said| fluid_or_class(said, reference, problems)).collect();
    let hours = section.quantity("hours", problems).map_or_else(
        || units::parse("4 h/week").unwrap_or_else(|_| unreachable!("a usage as people write it")),
        |said: Said<Usage>| said.value,
    );
    let room = section.section("room", problems);
    let room = Room::read(room, reference, assumed, problems);
    let damp = room.heating == Heating::None;
    let around = Around { reference, kinds: kinds.points, damp, hours };
    let mut machines: Vec<Machine> = Vec::new();
    for own in section.sections("machine", problems) {
        let at = own.at.clone();
        let machine = Machine::read(own, &around, assumed, problems);
        if machines.iter().any(|other| other.name == machine.name) {
            problems.add(at, format!("two machines are called `{}`", machine.name), "Give each a `name` of its own.");
        }
        machines.push(machine);
    }
    let mut work: Vec<Job> = Vec::new();
    for own in section.sections("work", problems) {
        let at = own.at.clone();
        let Some(job) = Job::read(own, kinds.jobs, reference, assumed, problems) else { continue };
        if work.iter().any(|other| other.name == job.name) {
            problems.add(at, format!("two pieces of work are called `{}`", job.name), "Give each a `name` of its own.");
        }
        work.push(job);
    }
    if !section.has("work") {
        work.extend(supposed(&machines, kinds.jobs, reference, assumed, problems));
    }
    let pots = section.sections("pot", problems).into_iter().filter_map(|own| Pot::read(own, reference, problems)).collect();
    if machines.is_empty() && work.is_empty() && problems.is_empty() {
        problems.add(
            None,
            "the file describes neither a machine nor any work",
            "Begin with `[[machine]]` and, below it, `template = \"bench lathe\"`.",
        );
    }
    section.close(problems);
    Shop { name, units, currency, room, machines, work, pots, avoid, assumptions: Vec::new() }
}

fn read_currency(section: &mut Section<'_>, reference: &Reference, assumed: &mut Assumptions, problems: &mut Problems) -> String {
    let Some(said) = section.text("currency", problems) else {
        if !section.has("currency") {
            assumed.add("shop", "currency", "USD", "common-practice");
        }
        return "USD".to_owned();
    };
    if reference.currency(&said.value).is_none() {
        let known = reference.currencies.keys().map(String::as_str);
        problems.add(said.at, format!("`{}` is not a currency known here", said.value), did_you_mean(&said.value, known));
    }
    said.value
}
