//! What two measured parts come to: a press that holds by itself, a bond, or a part to be made again.

use formulas::fit::{Feature, Instrument, Measured};
use formulas::interference::{Holding, Joint, bush_closing, contact_pressure, interference_when_warmer, press_force};
use formulas::rescue::{Blown, Decision, Method, Rescue, rescue};
use formulas::working::{Recorder, Silent};
use units::{Force, Length, Quantity, System, Temperature, TemperatureDifference, Torque, show};

use super::metals::{adhesion_of, bond_metals, press_metal};
use super::{Asked, BY, BORE, OUTSIDE, RUN_OUT};
use crate::demand::celsius;
use crate::needs::Complaint;
use crate::needs::jobs::Bench;

/// What the measured parts come to.
pub(super) enum Fit {
    /// Pressed as they are they hold: nothing is needed; says what holds and what it takes to press.
    Press(String),
    /// Nothing bridges or carries it; says so.
    Remake(String),
    /// A bond of this case, with what has to be minded of the measurement.
    Bond { case: &'static str, minds: Vec<String> },
    /// No more is known than the gap.
    Gap,
}

/// Judges a measured hole and shaft.
pub(super) fn judge<R: Recorder>(r: &mut R, bench: &Bench<'_>, asked: &Asked<'_>, hole: Length, gap: Length) -> Result<Fit, Complaint> {
    let (Some(shaft_key), Some(hub_key)) = (asked.metals.first(), asked.metals.last()) else { return Ok(Fit::Gap) };
    let metals = (press_metal(bench.reference, shaft_key), press_metal(bench.reference, hub_key));
    let ((Some(shaft), Some(hub)), Some(adhesion)) = (metals, adhesion_of(bench.reference, shaft_key, hub_key)) else { return Ok(Fit::Gap) };
    let answers = bench.answers();
    let outside: Length = answers.quantity(&OUTSIDE);
    let supposed = outside.base() <= 0.0;
    let joint = Joint {
        diameter: asked.diameter,
        shaft_bore: answers.quantity(&BORE),
        hub_outside: if supposed { 2.0 * asked.diameter } else { outside },
        length: asked.length,
        shaft,
        hub,
    };
    let [by_hole, by_shaft] = instruments(answers.word(&BY));
    let measured = |size, by, expansion_per_k| Measured {
        size,
        by,
        spread: Length::from_base(0.0),
        expansion_per_k,
        warmth: TemperatureDifference::from_base(0.0),
    };
    let told = asked.load.base() > 0.0 || asked.torque.base() > 0.0;
    // A load nobody told of cannot be held against anything; a newton asks only that the parts interfere for certain.
    let least = if told { asked.load } else { Force::from_base(1.0) };
    let blown = Blown {
        bore: measured(hole, by_hole, hub.expansion_per_k),
        shaft: measured(asked.diameter, by_shaft, shaft.expansion_per_k),
        joint,
        adhesion,
        bond_metals: bond_metals(bench, asked.metals),
        roughness: [asked.roughness; 2],
        load: Holding { axial: least, torque: asked.torque },
        loading: asked.loading,
        safety: asked.press_safety,
        service: asked.hottest,
        run_out: answers.quantity(&RUN_OUT),
        removable: false,
    };
    let tight = Length::from_base(-gap.base());
    let (left, at) = slackest(r, bench, &joint, tight, asked.hottest)?;
    // What is left there is judged as if the hole had been measured wider by what is lost.
    let slack = Blown { bore: Measured { size: hole + (tight - left), ..blown.bore }, ..blown };
    let presses = |blown: &Blown| Ok::<bool, Complaint>(rescue(&mut Silent, blown)?.decision == Decision::Take(Method::Press));
    if presses(&blown)? {
        if presses(&slack)? {
            let held = rescue(r, &slack)?;
            return Ok(Fit::Press(press_words(r, &blown, tight, &held, (told, supposed), bench.shop.units)?));
        }
        let bonded = rescue(r, &Blown { safety: asked.safety, ..blown })?;
        let words = format!(
            "Of the {} tight at {} {} tight is left at {}: the press alone does not hold there.",
            bench.show(tight),
            bench.show(celsius(20.0)),
            bench.show(if left.base() > 0.0 { left } else { Length::from_base(0.0) }),
            bench.show(at)
        );
        return Ok(match decided(&bonded, gap, bench.shop.units) {
            Fit::Bond { case, mut minds } => {
                minds.insert(0, words);
                Fit::Bond { case, minds }
            }
            other => other,
        });
    }
    if asked.removable || asked.hot {
        return Ok(Fit::Gap);
    }
    let bonded = rescue(r, &Blown { safety: asked.safety, ..blown })?;
    Ok(decided(&bonded, gap, bench.shop.units))
}

/// The least that is left of an interference between the coldest of the room and the hottest of the joint, and where; measured at 20 °C.
fn slackest<R: Recorder>(
    r: &mut R,
    bench: &Bench<'_>,
    joint: &Joint,
    tight: Length,
    hottest: Temperature,
) -> Result<(Length, Temperature), Complaint> {
    let mut left = |at: Temperature| {
        let warmer = TemperatureDifference::from_base(at.base() - celsius(20.0).base());
        Ok::<Length, Complaint>(interference_when_warmer(r, joint, tight, warmer)?)
    };
    let coldest = bench.room.coldest;
    let (cold, hot) = (left(coldest)?, left(hottest)?);
    Ok(if cold < hot { (cold, coldest) } else { (hot, hottest) })
}

/// What hole and shaft were measured with.
fn instruments(by: &str) -> [Instrument; 2] {
    match by {
        "bore micrometer" => [Instrument::BoreMicrometer, Instrument::Micrometer],
        "calliper" => [Instrument::CalliperJaws, Instrument::Calliper],
        _ => [Instrument::TelescopicGauge, Instrument::Micrometer],
    }
}

fn decided(rescue: &Rescue, gap: Length, units: System) -> Fit {
    let (method, mut minds) = match rescue.decision {
        Decision::Take(method) => (method, Vec::new()),
        Decision::Measure { part, by, until, towards } => (towards, vec![measure_words(part, by, until, units)]),
    };
    let case = match method {
        Method::Press | Method::PressAndBond => "retain-press",
        Method::LowViscosity => "retain-slip-small",
        Method::General => "retain-slip",
        Method::GapFilling => "retain-worn",
        Method::Remake if gap.base() > 0.0 => {
            return Fit::Remake(
                "None: at this gap no compound carries the load with its safety and runs true enough. Sleeve it (1.5 mm, 1/16 in, of wall at least, \
                 bonded in itself), build it up and machine it again, or remake it."
                    .to_owned(),
            );
        }
        Method::Remake => {
            return Fit::Remake(
                "None: pressed so tight a part yields, and a compound lightens no press. Bore, hone or turn it to size, or remake it.".to_owned(),
            );
        }
    };
    if case == "retain-press"
        && let Some(strength) = rescue.ways.iter().find(|way| way.method == Method::PressAndBond).and_then(|way| way.strength)
    {
        minds.push(format!(
            "Press and bond together hold {} at the face with the safety; they never add up in full. Pressing strips the compound: wet \
             both faces.",
            show(strength.low, units)
        ));
    }
    Fit::Bond { case, minds }
}

fn measure_words(part: Feature, by: Instrument, until: Length, units: System) -> String {
    let part = match part {
        Feature::Hole => "hole",
        Feature::Shaft => "shaft",
    };
    format!(
        "Measure the {part} again with {} before you choose, at three places and two angles: the gap must be known to {} (standard \
         uncertainty). A calliper cannot choose between a press, a slip and a bond.",
        by.words(),
        show(until, units)
    )
}

/// What a press that holds by itself holds, and what it takes to make it.
fn press_words<R: Recorder>(
    r: &mut R,
    blown: &Blown,
    tight: Length,
    rescue: &Rescue,
    (told, outside_supposed): (bool, bool),
    units: System,
) -> Result<String, Complaint> {
    let held = rescue.ways.iter().find(|way| way.method == Method::Press).and_then(|way| way.strength).map_or(Force::from_base(0.0), |s| s.low);
    let mut words = format!(
        "Nothing needed: {} tight on the diameter, the press holds {} at the face by itself with a safety of {}",
        show(tight, units),
        show(held, units),
        blown.safety,
    );
    words.push_str(&if told {
        format!(", and {} is asked.", show(rescue.needed, units))
    } else {
        "; say `load` or `torque` if it has to hold more.".to_owned()
    });
    let pressure = contact_pressure(r, &blown.joint, tight + 2.0 * rescue.gap.uncertainty)?;
    let force = press_force(r, &blown.joint, pressure)?;
    words.push_str(&format!(
        " Oiled and with a lead it goes in with {} to {}, or {} if it galls; stand out of its line.",
        show(force.low, units),
        show(force.likely, units),
        show(force.high, units)
    ));
    if blown.joint.shaft_bore.base() > 0.0 {
        let closes = bush_closing(r, &blown.joint, pressure)?;
        words.push_str(&format!(" Its bore closes by up to {}: ream it afterwards.", show(closes, units)));
    }
    if outside_supposed {
        words.push_str(" The hub is supposed to be twice as thick as the shaft; say `outside` if it is not.");
    }
    Ok(words)
}

/// Stress that a force and a torque together ask of a bond, of which it is known what it holds of each.
pub(super) fn share_of(load: Force, torque: Torque, held: (Force, Torque)) -> f64 {
    (load / held.0).value.hypot((torque / held.1).value)
}
