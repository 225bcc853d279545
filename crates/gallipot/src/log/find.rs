//! What is meant by a machine, a point or a pot of the command line.

use fields::did_you_mean;
use keep::Kept;
use shop::{Machine, Point, Pot};
use store::SectionId;

use crate::input::Failure;

/// The machine of that name, with its number.
pub(super) fn machine(kept: &Kept, words: &str) -> Result<(String, SectionId), Failure> {
    let machines = &kept.described.shop.machines;
    // Two names may differ by their capitals alone.
    let found = machines.iter().find(|machine| machine.name == words);
    let found = found.or_else(|| machines.iter().find(|machine| same(&machine.name, words)));
    let found = found.and_then(|machine| Some((machine.name.clone(), kept.described.section(&machine.at)?)));
    found.ok_or_else(|| {
        let known = machines.iter().map(|machine| machine.name.as_str());
        Failure::Said(format!("no machine of this shop is called `{words}`. {}", did_you_mean(words, known)))
    })
}

/// The machine and the point meant: by both names, by the point's name, or by a part that names only one; of one machine where that is
/// said. A name may have a slash in it, so both names are put together rather than the words taken apart.
pub(super) fn point(kept: &Kept, words: &str, at: Option<&str>) -> Result<(String, String), Failure> {
    let named = |(machine, point): &(&Machine, &Point)| format!("{}/{}", machine.name, point.name);
    let at = at.map(|at| machine(kept, at)).transpose()?.map(|(name, _)| name);
    let there = kept.points().map(|(machine, point, _)| (machine, point));
    let all: Vec<(&Machine, &Point)> = there.filter(|(machine, _)| at.as_ref().is_none_or(|at| machine.name == *at)).collect();
    let asked = words.trim().to_lowercase();
    let fitting = |fits: &dyn Fn(&(&Machine, &Point)) -> bool| all.iter().filter(|one| fits(one)).collect::<Vec<_>>();
    let tries = [
        fitting(&|one| named(one) == words),
        fitting(&|one| same(&named(one), words)),
        fitting(&|one| same(&one.1.name, words)),
        fitting(&|one| named(one).to_lowercase().contains(&asked)),
    ];
    match tries.iter().find(|found| !found.is_empty()).map(Vec::as_slice) {
        Some([(machine, point)]) => Ok((machine.name.clone(), point.name.clone())),
        Some(several) => {
            let names: Vec<String> = several.iter().map(|one| named(one)).collect();
            Err(Failure::Said(format!(
                "`{words}` names several points: {}. Name one of them, or its machine with --machine.",
                names.join(", ")
            )))
        }
        None => {
            let names: Vec<String> = all.iter().map(named).collect();
            let short = all.iter().map(|(_, point)| point.name.as_str());
            let mend = did_you_mean(words, names.iter().map(String::as_str).chain(short));
            Err(Failure::Said(format!("no point of this shop is called `{words}`. {mend}")))
        }
    }
}

/// The pot meant: by its number, its name or its fluid.
pub(super) fn pot(kept: &Kept, words: &str) -> Result<SectionId, Failure> {
    let pots = &kept.described.shop.pots;
    let number = words.trim().parse::<usize>().ok().and_then(|number| number.checked_sub(1));
    let named = |pot: &&Pot| pot.name.as_ref().is_some_and(|name| same(name, words)) || same(&pot.fluid, words);
    let found: Vec<&Pot> = match number {
        Some(number) => pots.get(number).into_iter().collect(),
        None => pots.iter().filter(named).collect(),
    };
    let many = found.len();
    let only = found.first().filter(|_| many == 1).and_then(|pot| kept.described.section(&pot.at));
    only.ok_or_else(|| {
        let known = pots.iter().map(|pot| pot.name.as_deref().unwrap_or(&pot.fluid));
        Failure::Said(match many {
            0 => format!("no pot of this shop is called `{words}`. {}", did_you_mean(words, known)),
            _ => format!("{many} pots are called `{words}`; give the number that `gallipot cupboard` shows."),
        })
    })
}

fn same(known: &str, words: &str) -> bool {
    known.eq_ignore_ascii_case(words.trim())
}
