//! What a press or shrink fit holds, whether it splits the hub, and how it goes together.

use formulas::Notebook;
use formulas::Silent;
use formulas::interference::{
    Assembly, Holding, Joint, PRESSES_KN, assembly_play, assembly_temperature, bush_closing, contact_pressure, effective_interference,
    holding, hub_pressure_limit, interference_when_warmer, press_force, shaft_pressure_limit, smallest_pressure, stresses,
};
use reference::Material;
use units::{Force, Length, Pressure, Quantity, Range, Temperature, TemperatureDifference, Torque};

use super::common::{degrees, said};
use super::solid::{contact_adhesion, objections};
use super::{Asked, Outcome, Unanswered};

/// A press fit to be judged.
pub(super) struct Press<'a> {
    pub joint: Joint,
    /// Hub and shaft.
    pub materials: [&'a Material; 2],
    /// On the diameter; below nothing is a gap.
    pub interference: Range<Length>,
    /// Roughness Rz of hub and shaft.
    pub rz: [Length; 2],
    pub shrunk: bool,
    pub oiled: bool,
    pub safety: f64,
    pub force: Option<Force>,
    pub torque: Option<Torque>,
    pub room: Temperature,
    pub service: Option<Temperature>,
}

/// What the two roughnesses take from an interference, on the diameter.
pub(super) fn smoothing(hub: Length, shaft: Length) -> Option<Length> {
    let ample = Length::from_base(0.01);
    let left = effective_interference(&mut Silent, ample, hub, shaft, Assembly::Pressed).ok()?;
    Some(ample - left.low)
}

fn at_least_nothing(length: Length) -> Length {
    if length > Length::from_base(0.0) { length } else { Length::from_base(0.0) }
}

pub(super) fn press(asked: &Asked<'_>, press: &Press<'_>, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let joint = &press.joint;
    let interference = warmed(press, r)?;
    let greatest = at_least_nothing(interference.high);
    let assembly = if press.shrunk { Assembly::Shrunk } else { Assembly::Pressed };
    let [hub_rz, shaft_rz] = press.rz;
    let mut left = |delta: Length| effective_interference(r, at_least_nothing(delta), hub_rz, shaft_rz, assembly);
    let left = Range { low: left(interference.low)?.low, likely: left(interference.likely)?.likely, high: left(interference.high)?.high };
    // A part is strained by the whole of the greatest interference, and holds by what the least leaves.
    let hardest = contact_pressure(r, joint, greatest)?;
    let pressure = Range { low: contact_pressure(r, joint, left.low)?, likely: contact_pressure(r, joint, left.likely)?, high: hardest };
    let stress = stresses(r, joint, hardest)?;
    let hub_limit = hub_pressure_limit(r, joint)?;
    let shaft_limit = shaft_pressure_limit(r, joint)?;
    let limit = if hub_limit <= shaft_limit { hub_limit } else { shaft_limit };
    let weaker = if hub_limit <= shaft_limit { "the hub" } else { "the shaft" };
    let whole = hardest <= limit;
    let outcome = outcome
        .range("interference left once smoothed", left)
        .range("contact pressure", pressure)
        .says("the high end from the whole interference, the low from what the roughness leaves of the least")
        .exact("equivalent stress at the hub's bore, at most", stress.hub_equivalent)
        .exact("pull round the hub's bore, at most", stress.hub_bore_hoop)
        .exact("contact pressure it bears", limit)
        .says(if whole { format!("{weaker} stays elastic") } else { format!("{weaker} gives way before the greatest interference") });
    let outcome = held(asked, press, pressure, whole, outcome, r)?;
    let outcome = together(asked, press, (greatest, hardest, whole), outcome, r)?;
    Ok(outcome
        .caution("Press behind a guard, and cover brittle parts: a hub can burst and a shaft can fly.", "common-practice")
        .caution(
            "Mount no wheel, chuck, brake, steering or lifting part by these figures alone: for road vehicles and lifting gear the maker and the law come first.",
            "common-practice",
        ))
}

/// The interference that is left at the heat of service.
fn warmed(press: &Press<'_>, r: &mut Notebook) -> Result<Range<Length>, Unanswered> {
    let Some(service) = press.service else { return Ok(press.interference) };
    let warmer = TemperatureDifference::from_base(service.base() - press.room.base());
    let mut at = |delta: Length| interference_when_warmer(r, &press.joint, delta, warmer);
    let warm = Range { low: at(press.interference.low)?, likely: at(press.interference.likely)?, high: at(press.interference.high)? };
    // What strains the parts most, cold or warm, and what holds least.
    let least = if warm.low < press.interference.low { warm.low } else { press.interference.low };
    let most = if warm.high > press.interference.high { warm.high } else { press.interference.high };
    Ok(Range { low: least, likely: warm.likely, high: most })
}

fn held(
    asked: &Asked<'_>,
    press: &Press<'_>,
    pressure: Range<Pressure>,
    whole: bool,
    outcome: Outcome,
    r: &mut Notebook,
) -> Result<Outcome, Unanswered> {
    let joint = &press.joint;
    let adhesion = contact_adhesion(asked.reference, press.materials, press.oiled)?;
    let low = holding(r, joint, pressure.low, adhesion, press.safety)?;
    let likely = holding(&mut Silent, joint, pressure.likely, adhesion, 1.0)?;
    let high = holding(&mut Silent, joint, pressure.high, adhesion, 1.0)?;
    let outcome = outcome
        .range("force it holds along", Range { low: low.axial, likely: likely.axial, high: high.axial })
        .says(format!("the low end has the safety of {} in it", said(press.safety)))
        .range("torque it holds", Range { low: low.torque, likely: likely.torque, high: high.torque });
    let splits = "the greatest interference strains a part past its limit: less interference, or a thicker hub";
    if press.force.is_none() && press.torque.is_none() {
        let why = if whole { "nothing yields; give `torque` or `force` to have the load judged" } else { splits };
        return Ok(outcome.way(
            "press it",
            whole && pressure.low.base() > 0.0,
            if pressure.low.base() > 0.0 { why } else { "the least interference leaves no press" },
        ));
    }
    let load = Holding { axial: press.force.unwrap_or_default(), torque: press.torque.unwrap_or_default() };
    let wanted = smallest_pressure(r, joint, load, adhesion, press.safety)?;
    let outcome = outcome.exact("contact pressure the load asks for", wanted);
    let holds = pressure.low >= wanted;
    let why = match (holds, whole) {
        (true, true) => "the least interference holds the load with its safety, and the greatest splits nothing: no adhesive is needed",
        (true, false) => splits,
        (false, true) => "the least interference does not hold the load: press it with a high-strength compound, or see the sheet rescue",
        (false, false) => "the least interference holds too little and the greatest strains too much: closer limits, or a thicker hub",
    };
    Ok(outcome.way("press it", holds && whole, why))
}

/// How it goes together: by force, or by heat.
fn together(
    asked: &Asked<'_>,
    press: &Press<'_>,
    (greatest, hardest, whole): (Length, Pressure, bool),
    outcome: Outcome,
    r: &mut Notebook,
) -> Result<Outcome, Unanswered> {
    let joint = &press.joint;
    let [hub, shaft] = press.materials;
    if greatest.base() <= 0.0 {
        return Ok(outcome);
    }
    let force = press_force(r, joint, hardest)?;
    let serves = PRESSES_KN.iter().find(|(_, kilonewtons)| force.high.base() <= kilonewtons * 1e3);
    let mut outcome = outcome.range("force to press it in", force).says(match serves {
        Some((name, _)) => format!("a {name} does it, with oil or paste and a lead of 10 to 15°"),
        None => "more than a home shop's press has: shrink it".to_owned(),
    });
    let play = assembly_play(r, joint.diameter)?;
    let hot = assembly_temperature(r, greatest, play, joint.diameter, joint.hub.expansion_per_k, press.room)?;
    let against = objections(asked, [(hub, &joint.hub), (hub, &joint.hub)], hot);
    let why = match (against.is_empty(), whole) {
        (true, true) => "the hub bears that heat".to_owned(),
        (true, false) => "the hub bears that heat, but not the strain when it has cooled".to_owned(),
        (false, _) => against.join(" "),
    };
    outcome =
        outcome.exact("heat of the hub that drops it on", hot).says("the shaft at room temperature; measure it, do not guess by colour");
    outcome = outcome.way(format!("shrink it on at {}", degrees(hot)), against.is_empty() && whole, why.trim_end_matches('.'));
    if joint.shaft_bore.base() > 0.0 {
        outcome =
            outcome.exact("its bore closes by", bush_closing(r, joint, hardest)?).says(format!("in {}: ream or bore it after", shaft.name));
    }
    Ok(outcome.caution("Hot parts look like cold ones: dry gloves, a mark, and nothing that burns near.", "common-practice"))
}
