//! Threadlocker: which strength, how hard it comes undone against what breaks the bolt, how much, how long.

use fields::{Given, Kind};
use formulas::bond::{BondMetal, cure_time};
use formulas::thread::{locking_volume, mean_gap};
use formulas::tightening::{Bolt, Grade, Locker, LoosenRisk, Loosening, breaking_torque, loosen_risk, loosening_torque, preload_for_share};
use formulas::{Notebook, Recorder, Silent};
use reference::Fluid;
use reference::practice::Lock;
use units::{Force, Length, Quantity, Range, System, Temperature, Torque, Volume, show};

use super::common::{choice, is_one_of, said};
use super::solid::{NEAR, bond_metal, drops, lowered};
use super::torque::{CLASS, THREAD, bolt};
use super::{Asked, Outcome, Unanswered};

const METALS: Given<Vec<String>> = Given::materials("metals", "mild-steel", "common-practice", "what bolt and nut are made of");
const USE: Given<&'static str> = Given::choice(
    "use",
    &["removable", "adjuster", "never-again", "assembled", "calibrating"],
    "removable",
    "common-practice",
    "a bolt that comes undone, a screw that is set, a stud for good, one already tight, a screw of a jig or slide",
);
const WETTED: Given<Option<Length>> = Given::maybe("wetted", "length of thread wetted; as high as a nut, 0.8 of the thread, if not given");
const SHARE: Given<f64> = Given::number("share", "75", "shigley", "per cent of the proof load it is tightened to");
const LOOSE: Given<bool> = Given::flag("loose", "no", "common-practice", "whether it is not tightened at all, as an adjuster");
const WORN: Given<bool> = Given::flag("worn", "no", "common-practice", "whether the thread is worn, or cut with a hand die");
const ACTIVATOR: Given<bool> = Given::flag("activator", "no", "common-practice", "whether an activator is put on first");
const SERVICE: Given<Temperature> = Given::quantity("service", "40 °C", "common-practice", "hottest it gets in service");
const ROOM: Given<Temperature> = Given::quantity("room", "20 °C", "common-practice", "temperature it cures at");

pub(super) static KIND: Kind = Kind {
    name: "locking",
    about: "which threadlocker, how hard it comes undone, how much to put on and how long to wait",
    fields: &[
        THREAD.field(),
        CLASS.field(),
        METALS.field(),
        USE.field(),
        WETTED.field(),
        SHARE.field(),
        LOOSE.field(),
        WORN.field(),
        ACTIVATOR.field(),
        SERVICE.field(),
        ROOM.field(),
        NEAR.field(),
    ],
};

/// Friction of a bolt on the way out; *common practice*.
const FRICTION: f64 = 0.14;
/// A nut is this high, by its thread; ISO 4032, *from memory*.
const NUT: f64 = 0.8;

/// A bolt with what it was tightened to.
struct Set {
    bolt: Bolt,
    preload: Force,
    wetted: Length,
    breaking: Torque,
}

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let (bolt, class) = bolt(asked)?;
    let set = set(asked, bolt, class, r)?;
    let metals: Vec<&str> = answers.words(&METALS).iter().map(String::as_str).collect();
    let any_is = |group: &str| metals.iter().any(|metal| asked.reference.is_a(metal, group));
    let row = asked.reference.locking(lock(answers.word(&USE)).case(set.bolt.thread.major, any_is));
    let row = row.ok_or_else(|| Unanswered::Contradiction("nothing is known of this case".to_owned()))?;
    let mut outcome = Outcome::default();
    if row.ranked.is_empty() {
        return Ok(said_always(outcome.way("no threadlocker", false, row.why.clone())));
    }
    let bonded = bond_metals(asked, &metals)?;
    let mut chosen: Option<(&Fluid, Locker)> = None;
    let classes = row.ranked.iter().map(String::as_str);
    let others = ["threadlock-low", "threadlock-medium", "threadlock-high"]
        .into_iter()
        .filter(|class| !row.ranked.iter().any(|known| known == class));
    let mut misses = Vec::new();
    for class in classes.chain(others) {
        let Some(fluid) = asked.reference.fluids_of(class).next() else { continue };
        let Some(locker) = locker(fluid) else { continue };
        let wanted = row.ranked.iter().any(|known| known == class);
        let (fits, why) = judge(asked, fluid, locker, &set, wanted)?;
        if fits {
            let why = if chosen.is_none() { format!("{why}; {}", lowered(&row.why)) } else { why };
            chosen.get_or_insert((fluid, locker));
            outcome = outcome.choices([choice(fluid, true, why)]);
        } else {
            misses.push(choice(fluid, false, why));
        }
    }
    outcome = outcome.choices(misses);
    if let Some((fluid, locker)) = chosen {
        outcome = worked(asked, fluid, locker, &set, bonded, outcome, r)?;
    }
    Ok(said_always(outcome))
}

fn set(asked: &Asked<'_>, bolt: Bolt, class: Grade, r: &mut Notebook) -> Result<Set, Unanswered> {
    const LONGEST: f64 = 5.0;
    let answers = asked.answers;
    let meant = preload_for_share(r, &bolt.thread, class.proof, answers.number(&SHARE) / 100.0)?;
    let loose = answers.flag(&LOOSE) || answers.word(&USE) == "adjuster";
    let wetted = answers.maybe(&WETTED).unwrap_or(NUT * bolt.thread.major);
    if wetted > LONGEST * bolt.thread.major {
        return Err(Unanswered::Contradiction(
            "`wetted` is more than five times the thread's diameter: a nut's height is enough, and a whole bottle holds no better"
                .to_owned(),
        ));
    }
    let breaking = breaking_torque(r, &bolt.thread, class.tensile)?;
    Ok(Set { bolt, preload: if loose { Force::from_base(0.0) } else { meant }, wetted, breaking })
}

fn lock(word: &str) -> Lock {
    match word {
        "adjuster" => Lock::Adjuster,
        "never-again" => Lock::ForGood,
        "assembled" => Lock::Assembled,
        "calibrating" => Lock::Calibrating,
        _ => Lock::Removable,
    }
}

fn bond_metals(asked: &Asked<'_>, metals: &[&str]) -> Result<[BondMetal; 2], Unanswered> {
    let mut found = metals.iter().map(|key| {
        let material = asked.reference.material(key);
        bond_metal(asked.reference, material.ok_or_else(|| Unanswered::Contradiction(format!("`{key}` is no material")))?)
    });
    match (found.next(), found.next(), found.next()) {
        (Some(one), None, _) => one.map(|one| [one, one]),
        (Some(one), Some(other), None) => Ok([one?, other?]),
        _ => Err(Unanswered::Contradiction("`metals` takes one or two: the bolt and the nut".to_owned())),
    }
}

/// A wicking locker holds about as a medium one.
fn locker(fluid: &Fluid) -> Option<Locker> {
    let classes = [
        ("threadlock-low", Locker::Low),
        ("threadlock-medium", Locker::Medium),
        ("threadlock-wicking", Locker::Medium),
        ("threadlock-high", Locker::High),
    ];
    classes.into_iter().find(|(class, _)| is_one_of(fluid, &[class])).map(|(_, locker)| locker)
}

fn loosening<R: Recorder>(r: &mut R, set: &Set, locker: Locker) -> Result<Loosening, Unanswered> {
    Ok(loosening_torque(r, &set.bolt, locker, set.wetted, set.preload, FRICTION)?)
}

fn of_breaking(loosening: &Loosening, set: &Set) -> Range<f64> {
    loosening.total.map(|torque| (torque / set.breaking).value * 100.0)
}

fn judge(asked: &Asked<'_>, fluid: &Fluid, locker: Locker, set: &Set, wanted: bool) -> Result<(bool, String), Unanswered> {
    let found = loosening(&mut Silent, set, locker)?;
    let share = format!(
        "comes undone at {}, {} % of what twists the bolt off",
        show(found.total.likely, System::Metric),
        units::show_number(of_breaking(&found, set).likely, units::Digits::Significant(2))
    );
    let service = asked.answers.quantity(&SERVICE);
    if let Some(hottest) = fluid.hottest_service().filter(|hottest| service > *hottest) {
        return Ok((false, format!("it bears {} at most", show(hottest, System::Metric))));
    }
    Ok(match loosen_risk(&found, set.breaking) {
        // What the trade ranks stays so where the bolt may be stronger than it is counted, as in the plan.
        LoosenRisk::HeatFirst if wanted && asked.answers.word(&CLASS) == "unknown" => {
            (true, format!("{share} as the weakest bolt it may be: heat it before you undo it"))
        }
        LoosenRisk::HeatFirst => {
            let for_good = asked.answers.word(&USE) == "never-again" && wanted;
            (for_good, format!("{share}: cold it shears, so heat comes first, always"))
        }
        LoosenRisk::Near => (wanted, format!("{share}: it may shear, so warm it first")),
        LoosenRisk::Safe => (wanted, if wanted { share } else { format!("{share}, but not what this case asks for") }),
    })
}

fn worked(
    asked: &Asked<'_>,
    fluid: &Fluid,
    locker: Locker,
    set: &Set,
    metals: [BondMetal; 2],
    outcome: Outcome,
    r: &mut Notebook,
) -> Result<Outcome, Unanswered> {
    /// Flanks that bear touch; the film between them is no thicker than a close gap.
    const FILM_M: f64 = 0.05e-3;
    /// Waste, and what a worn thread takes more; *common practice*.
    const WASTE: f64 = 2.0;
    let answers = asked.answers;
    let found = loosening(r, set, locker)?;
    let gap = mean_gap(r, &set.bolt.thread)?;
    let space: Volume = locking_volume(r, &set.bolt.thread, set.wetted, gap)?;
    let put = if answers.flag(&WORN) { WASTE * WASTE * space } else { WASTE * space };
    let activator = answers.flag(&ACTIVATOR);
    let cure = cure_time(r, answers.quantity(&ROOM), Length::from_base(FILM_M), metals, activator)?;
    let name = &fluid.name;
    let slow = metals.iter().all(|metal| metal.passive()) && !activator;
    let risk = loosen_risk(&found, set.breaking);
    Ok(outcome
        .range(format!("{name}: torque that undoes it"), found.total)
        .says("of which the locker's part is known within 40 %")
        .range("the locker's part", found.locker)
        .exact("torque that twists the bolt off", set.breaking)
        .numbers("undoing, of the twisting off", "%", of_breaking(&found, set))
        .says(match risk {
            LoosenRisk::Safe => "it comes undone cold",
            LoosenRisk::Near => "it may shear: warm it first",
            LoosenRisk::HeatFirst => "heat it to 250 °C first, and undo it hot",
        })
        .range("locker", Range { low: space, likely: put, high: put })
        .says(format!("{} to put on, the low end the thread's own space; in a blind hole, into its bottom", drops(put)))
        .range("leave it alone for", cure.fixture)
        .exact("load it after", cure.full)
        .caution_if(
            risk == LoosenRisk::HeatFirst,
            "Heat to 250 °C draws the temper of hard steel and T6 aluminium, and harms plating, solder, magnets, seals and plastic near it; fumes irritate.",
            "common-practice",
        )
        .caution_if(slow, "Both metals are passive: it cures slowly or not at all without an activator.", "common-practice")
        .caution_if(
            said_near(asked),
            "What you named near it does not bear the heat that undoes a high-strength locker: take a weaker one.",
            "common-practice",
        ))
}

fn said_near(asked: &Asked<'_>) -> bool {
    asked.answers.words(&NEAR).iter().any(|word| word != "nothing")
}

fn said_always(outcome: Outcome) -> Outcome {
    outcome
        .caution(
            "Never the only security of brakes, steering, lifting gear or road vehicles: there the maker's way, a pin, a wire or a tab.",
            "common-practice",
        )
        .caution("Threadlocker cracks acrylic, polycarbonate and ABS: keep it off them.", "common-practice")
        .caution("It can make you allergic for good: nitrile gloves. Once cured it cannot be tightened again.", "un-ghs")
        .caution(format!("Loosening is worked at a friction of {}; try one before you lock many.", said(FRICTION)), "common-practice")
}
