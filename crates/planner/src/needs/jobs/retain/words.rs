//! What to mind of a bonded joint: what it holds, how much goes on, how true it runs, and how it comes off.

use formulas::bond::{Bonded, Retainer, drops, heat_to_undo, push_out_force};
use formulas::interference::{Neighbour, Objection, PRESSES_KN, heating_objections};
use formulas::working::Recorder;
use units::{Force, Length, Quantity, Range, System, Temperature, Volume, show};

use super::Asked;
use super::metals::press_metal;
use crate::needs::Complaint;
use crate::needs::jobs::{Bench, Step};

/// Everything to mind, in the order it comes up.
#[expect(clippy::too_many_arguments, reason = "each is one of the answers that the words are made of")]
pub(super) fn minded<R: Recorder>(
    r: &mut R,
    step: Step,
    bench: &Bench<'_>,
    asked: &Asked<'_>,
    gap: Length,
    amount: &Range<Volume>,
    held: Option<(&Bonded, f64)>,
    compound: &Retainer,
) -> Result<Step, Complaint> {
    let step = match held {
        Some((held, left)) => step.mind(holds(asked, held, left, bench.shop.units), "iso-10123"),
        None => step,
    };
    let step = step.mind(quantity(amount), "common-practice").mind_if(
        gap.base() > 0.0,
        format!("It may run out by up to the gap of {}; where that matters, centre it with a shim or a vee while it sets.", bench.show(gap)),
        "common-practice",
    );
    let push = push_out_force(r, compound, asked.diameter, asked.length)?;
    let heat = heat_to_undo(compound.heat);
    Ok(step
        .mind(
            format!(
                "{} heat the joint to {} and pull it hot, for it sets again; outdoors or under extraction.{}",
                push_words(&push, bench.shop.units),
                bench.show(heat),
                at_risk(bench, asked, heat)
            ),
            "common-practice",
        )
        .mind(
            "May make the skin allergic: nitrile gloves. Never the only security of brakes, steering or lifting gear; an estimate for \
             hobby use, test on scrap.",
            "un-ghs",
        ))
}

fn holds(asked: &Asked<'_>, held: &Bonded, left: f64, units: System) -> String {
    let [low, likely, high] = [left * held.axial.low, left * held.axial.likely, held.axial.high].map(|force| show(force, units));
    format!(
        "Set, it holds {low} along or {} round with a safety of {}; likely {likely}, at most {high}.",
        show(left * held.torque.low, units),
        asked.safety
    )
}

fn quantity(amount: &Range<Volume>) -> String {
    let drops = drops(amount.likely);
    let mm3 = |volume: Volume| volume.base() * 1e9;
    let plural = if drops > 1.0 { "s" } else { "" };
    let put_on = format!("put on {:.0} mm³, {drops:.0} drop{plural}, to each joint.", mm3(amount.likely));
    if amount.low.base() > 0.0 {
        format!("The gap of one joint holds {:.1} mm³: {put_on}", mm3(amount.low))
    } else {
        format!("There is no gap to fill: {put_on}")
    }
}

/// How a press gets it off, where a small shop has one strong enough.
fn push_words(push: &Range<Force>, units: System) -> String {
    let strongest = PRESSES_KN.iter().map(|(_, force)| force * 1e3).fold(0.0, f64::max);
    let force = |force: Force| show(force, units);
    if push.low.base() > strongest {
        format!("Cold, at the full strength of its class it takes {} to {} to push out, more than a small press has:", force(push.low), force(push.high))
    } else {
        format!("Off again: try a press first, {} to {} at the full strength of its class. Else", force(push.low), force(push.high))
    }
}

/// What the heat that undoes a joint spoils.
fn at_risk(bench: &Bench<'_>, asked: &Asked<'_>, heat: Temperature) -> String {
    let suffers = |key: &&String| {
        let near: &[Neighbour] = match key.as_str() {
            "zinc-plate" => &[Neighbour::Plating],
            "magnesium" => &[Neighbour::Magnesium],
            _ => &[],
        };
        // A metal the press fits do not know is not judged by itself.
        let hottest = press_metal(bench.reference, key).map_or(heat, |metal| metal.hottest);
        let objections = heating_objections(heat, hottest, near);
        (!objections.is_empty()).then(|| match objections.first() {
            Some(Objection::Metal { hottest }) => format!("{} (bears {})", bench.reference.name_of(key), bench.show(*hottest)),
            _ => bench.reference.name_of(key),
        })
    };
    let metals: Vec<String> = asked.metals.iter().filter_map(|key| suffers(&key)).collect();
    let here = if metals.is_empty() { String::new() } else { format!(" Such heat spoils {} here.", metals.join(" and ")) };
    format!("{here} Keep it from rubber, plastic cages, soft solder, magnets, plating, grease and sealed volumes.")
}
