//! Tightening a screw that must be lubricated or kept from seizing.
//!
//! Stainless, aluminium and titanium gall whatever the torque and want solids; so does what gets hot. The rest wants a drop of oil. The
//! torque is worked for the thread as it will be lubricated, never taken from the dry table.

pub(super) mod bolt;

use formulas::cutting::DROP_ML;
use formulas::tightening::{Bolt, Condition, Converted, Grade, converted_torque, preload_for_share, torque_range};
use formulas::working::Recorder;
use shop::{Given, Kind};
use units::{Force, Quantity, Range, System, Temperature, Torque, in_celsius, show};

use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use bolt::{GRADE, NAMED, Screw, THREAD, screw};

const METALS: Given<Vec<String>> = Given::materials("metals", "mild-steel", "common-practice", "what screw and nut are made of");
const TORQUE: Given<Torque> = Given::quantity("torque", "0 N m", "common-practice", "torque given for the dry thread, where you have one");
const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "40 °C", "common-practice", "hottest the screw gets");
const PIECES: Given<f64> = Given::number("pieces", "10", "common-practice", "how many screws each time");

pub(super) static KIND: Kind = Kind {
    name: "tighten",
    about: "tightening screws so that they hold and come undone again",
    fields: &[THREAD.field(), NAMED.field(), GRADE.field(), METALS.field(), TORQUE.field(), TEMPERATURE.field(), PIECES.field()],
};

/// Beyond this an oil dries out of a thread, °C; *common practice*.
const HOT_C: f64 = 120.0;

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (metals, temperature): (_, Temperature) = (answers.words(&METALS), answers.quantity(&TEMPERATURE));
    let screw = screw(bench, metals)?;
    let galls = metals.iter().any(|metal| bench.reference.is_a(metal, "passive-metals") && metal != "zinc-plate");
    let solids = galls || in_celsius(temperature) > HOT_C;
    let step = Step::new("grease the thread", "wipe clean; thinly on the thread and under the head, nowhere else");
    let step = if solids {
        let why = if galls { "this metal galls and seizes in its own thread" } else { "oil bakes; the solids stay" };
        step.classes(&["anti-seize"], &["moly-grease", "ep-grease"], why, "common-practice").mind_if(
            galls,
            "Turn slowly: a thread that has begun to gall does not come back.",
            "common-practice",
        )
    } else {
        step.classes(
            &["light-machine-oil", "hydraulic-oil", "circulating-oil", "slideway-oil", "ep-grease"],
            &["spindle-oil", "gear-oil", "engine-oil", "lithium-grease", "rust-oil", "anti-seize"],
            "a dry thread scatters; a drop of oil makes the pull the same every time and keeps rust out",
            "common-practice",
        )
    };
    let dry = dry(bench, metals, galls);
    let (first, other) = match (galls, solids) {
        (true, _) => ((Condition::StainlessPaste, "With paste"), (Condition::StainlessOiled, "With grease in place of paste")),
        (_, true) => ((Condition::Paste, "With paste"), (Condition::Oiled, "With grease in place of paste")),
        _ => ((Condition::Oiled, "Oiled or greased"), (Condition::Paste, "With anti-seize paste in place of oil")),
    };
    let given = told(answers.quantity(&TORQUE));
    let screw = Tightened { bolt: Bolt::hexagon(screw.thread), screw: &screw, given, dry, galls, units: bench.shop.units };
    let step = step
        .demand("stands the heat", Test::Stands { hottest: temperature }, "what melts or cokes locks the thread", "common-practice")
        .spares(metals)
        .dose(Dose::ml(drop_ml(screw.bolt.thread.major.base()) * answers.number(&PIECES)))
        .mind(screw.words(r, first)?, "iso-16047")
        .mind(screw.other_words(r, other)?, "iso-16047")
        .mind("Wheels, brakes, steering, cylinder heads and lifting gear: only as the maker says.", "common-practice");
    Ok(vec![Task { consequence: Consequence::Spoils, times_a_year: bench.times_a_year(), steps: vec![step] }])
}

/// A torque, where one is given.
fn told(torque: Torque) -> Option<Torque> {
    (torque.base() > 0.0).then_some(torque)
}

/// How the thread would be without anything on it.
fn dry(bench: &Bench<'_>, metals: &[String], galls: bool) -> Condition {
    match () {
        () if galls => Condition::StainlessDry,
        () if bench.any_is(metals, "zinc-plate") => Condition::ZincDry,
        () => Condition::AsDelivered,
    }
}

/// A joint that is taken apart again is tightened to three quarters of its proof load; Shigley.
const SHARE_OF_PROOF: f64 = 0.75;
/// What galls is tightened to no more than this share of its 0.2 % proof stress; *common practice*.
const SHARE_WHERE_IT_GALLS: f64 = 0.65;

/// A screw that is tightened, whatever is on its thread.
struct Tightened<'a> {
    screw: &'a Screw,
    bolt: Bolt,
    /// A torque given for the dry thread.
    given: Option<Torque>,
    /// How the thread would be without anything on it.
    dry: Condition,
    galls: bool,
    units: System,
}

impl Tightened<'_> {
    /// What a torque for the dry thread becomes with another friction.
    fn converted<R: Recorder>(&self, r: &mut R, torque: Torque, now: f64) -> Result<Converted, Complaint> {
        Ok(converted_torque(r, &self.bolt, torque, self.dry.friction().likely, now)?)
    }

    /// The pull it is tightened to, as a share of its proof load and as a force.
    fn pull<R: Recorder>(&self, r: &mut R, grade: &Grade) -> Result<(f64, Force), Complaint> {
        let share = if self.galls { SHARE_WHERE_IT_GALLS * (grade.yields / grade.proof).value } else { SHARE_OF_PROOF };
        Ok((share, preload_for_share(r, &self.screw.thread, grade.proof, share)?))
    }

    /// The torque for the thread as it will be lubricated, and what the dry torque would do to it.
    fn words<R: Recorder>(&self, r: &mut R, (now, treated): (Condition, &str)) -> Result<String, Complaint> {
        let (is, units) = (now.friction(), self.units);
        if let Some(torque) = self.given {
            let mut at = |mu: f64| self.converted(r, torque, mu);
            let (low, likely, high) = (at(is.low)?, at(is.likely)?, at(is.high)?);
            let range = Range { low: low.torque, likely: likely.torque, high: high.torque };
            return Ok(format!(
                "{treated}, the {} given for dry become {}. {} {}",
                show(torque, units),
                scattered(range, units),
                overload_line(likely.overload, low.overload, None),
                LOW_END,
            ));
        }
        let one = Torque::from_base(1.0);
        let likely = self.converted(r, one, is.likely)?.overload;
        let worst = self.converted(r, one, is.low)?.overload;
        let Some(grade) = &self.screw.grade else {
            return Ok(format!(
                "{treated}, the thread takes {:.0} % of a torque given for dry. {}",
                100.0 / likely,
                overload_line(likely, worst, None)
            ));
        };
        let (share, preload) = self.pull(r, grade)?;
        let torque = torque_range(r, &self.bolt, preload, is)?;
        let untreated = torque_range(r, &self.bolt, preload, self.dry.friction())?;
        Ok(format!(
            "{treated}, tighten {} to {} for {:.0} % of its proof load, a pull of {}; dry it would take {}. {} {}",
            self.screw.counted,
            scattered(torque, units),
            share * 100.0,
            show(preload, units),
            show(untreated.likely, units),
            overload_line(likely, worst, Some(share)),
            LOW_END,
        ))
    }

    /// The torque for the thread with what else serves on it: another friction, another torque for the same pull.
    fn other_words<R: Recorder>(&self, r: &mut R, (now, treated): (Condition, &str)) -> Result<String, Complaint> {
        let is = now.friction();
        if let Some(torque) = self.given {
            let mut at = |mu: f64| self.converted(r, torque, mu).map(|converted| converted.torque);
            let range = Range { low: at(is.low)?, likely: at(is.likely)?, high: at(is.high)? };
            return Ok(format!("{treated} they become {}.", scattered(range, self.units)));
        }
        let Some(grade) = &self.screw.grade else {
            let overload = self.converted(r, Torque::from_base(1.0), is.likely)?.overload;
            return Ok(format!("{treated} the thread takes {:.0} % of a torque given for dry.", 100.0 / overload));
        };
        let (_, preload) = self.pull(r, grade)?;
        Ok(format!("{treated} tighten it to {} for the same pull.", scattered(torque_range(r, &self.bolt, preload, is)?, self.units)))
    }
}

const LOW_END: &str = "Take the low figure where stretching the screw would do harm, the likely one where coming loose would.";

/// `4.9 N·m (3.6 N·m to 6.3 N·m)`.
pub(super) fn scattered<Q: Quantity>(range: Range<Q>, units: System) -> String {
    let [low, likely, high] = [range.low, range.likely, range.high].map(|value| show(value, units));
    format!("{likely} ({low} to {high})")
}

/// What a torque given for dry would do to the lubricated thread.
fn overload_line(likely: f64, worst: f64, share: Option<f64>) -> String {
    let past = if share.is_some_and(|share| share * likely > 1.0) { ", past its proof load" } else { "" };
    format!("The dry torque would pull it {likely:.2} times as hard{past}, at the worst {worst:.2} times.")
}

/// A drop on a 6 mm thread, more with the square of the size; *common practice*.
fn drop_ml(size: f64) -> f64 {
    DROP_ML * (size / 0.006).powi(2)
}
