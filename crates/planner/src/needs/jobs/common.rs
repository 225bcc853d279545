//! What every job shares: tasks made of steps, and how a step becomes a need.

use std::borrow::Cow;

use formulas::bond::{BondMetal, cure_time};
use formulas::working::{Notebook, Recorder, Silent};
use handling::air::Way;
use handling::bars::{Bar, Beside};
use reference::fluid::Bond;
use reference::practice::{Cleaning, FinishRule, Locking};
use reference::{Form, Reference, Trait};
use shop::{Answers, Job, Room, Shop};
use units::{Area, Frequency, Length, Quantity, System, Time, YEAR, in_celsius, show};

use crate::demand::{Demand, Test};
use crate::need::{Consequence, Dose, Every, How, Need, Place, Ration};
use crate::needs::damp::{Damp, DampYear};
use crate::needs::{Complaint, count, id, weight};
use crate::surroundings::{Spent, WIPING_ML_PER_M2, room_air};
use crate::verdict::Grade;

/// The job, and all it is done in.
pub(crate) struct Bench<'a> {
    pub shop: &'a Shop,
    pub room: &'a Room,
    pub job: &'a Job,
    pub reference: &'a Reference,
    pub damp: &'a Damp,
}

impl Bench<'_> {
    /// What is said or supposed about the job.
    pub fn answers(&self) -> &Answers {
        &self.job.answers
    }

    /// A quantity in the shop's own units.
    pub fn show<Q: Quantity>(&self, quantity: Q) -> String {
        show(quantity, self.shop.units)
    }

    /// A temperature in whole degrees, in the shop's own units.
    pub fn degrees(&self, degrees_celsius: f64) -> String {
        self.show(crate::demand::celsius(degrees_celsius.round()))
    }

    /// How many times a year the job is done.
    pub fn times_a_year(&self) -> f64 {
        times_a_year(self.job.often)
    }

    /// Whether one of the materials is this material or belongs to this group.
    pub fn any_is(&self, materials: &[String], name: &str) -> bool {
        materials.iter().any(|material| self.reference.is_a(material, name))
    }

    /// Whether all of them do.
    pub fn all_are(&self, materials: &[String], name: &str) -> bool {
        materials.iter().all(|material| self.reference.is_a(material, name))
    }

    /// The row of a case of locking or retaining.
    pub fn locking(&self, case: &str) -> Result<&Locking, Complaint> {
        self.reference.locking(case).ok_or_else(|| missing(case))
    }

    /// The row of a soil.
    pub fn cleaning(&self, soil: &str) -> Result<&Cleaning, Complaint> {
        self.reference.cleaning(soil).ok_or_else(|| missing(soil))
    }

    /// The rule for a case of finish.
    pub fn finish_rule(&self, case: &str) -> Result<&FinishRule, Complaint> {
        self.reference.finish_rules.get(case).ok_or_else(|| missing(case))
    }

    /// The year of damp in the room.
    pub fn damp_year(&self) -> Result<&DampYear, Complaint> {
        self.damp.year(self.shop, self.reference)
    }

    /// The coldest air of the room, °C.
    pub fn coldest_celsius(&self) -> f64 {
        in_celsius(self.room.coldest)
    }
}

/// A row that a kind counts on and the data lack.
fn missing(row: &str) -> Complaint {
    Complaint::Contradiction {
        field: "job",
        what: format!("the data hold no row `{row}`"),
        mend: "Put the row back, or leave this work out of the file.",
    }
}

/// Fluid for wiping an area clean once: 50 to 100 mL for a square metre, but a wet cloth at least; *common practice*.
pub(crate) fn wipe(area: Area) -> Dose {
    const CLOTH_ML: f64 = 2.0;
    Dose::ml((WIPING_ML_PER_M2 * area.base()).max(CLOTH_ML))
}

fn times_a_year(often: Frequency) -> f64 {
    often.base() * YEAR
}

/// A piece of work that counts only when all its steps are served.
pub(crate) struct Task {
    /// What happens when it cannot be done properly.
    pub consequence: Consequence,
    /// Times a year.
    pub times_a_year: f64,
    /// In the order they are done.
    pub steps: Vec<Step>,
}

/// One step of a task.
pub(crate) struct Step {
    name: String,
    demands: Vec<Demand>,
    doses: Vec<(Form, Dose)>,
    how: Cow<'static, str>,
    mind: Vec<(Cow<'static, str>, &'static str)>,
    nothing: Option<Cow<'static, str>>,
    /// How what is spent meets the air, where it is not wiped.
    way: Option<Way>,
    /// What is beside it.
    beside: Beside,
    /// The stretch of the job's working that is this step's own; all of it where none is set.
    worked: Option<std::ops::Range<usize>>,
}

impl Step {
    /// A step done in this way.
    pub fn new(name: impl Into<String>, how: impl Into<Cow<'static, str>>) -> Self {
        Self {
            name: name.into(),
            demands: Vec::new(),
            doses: Vec::new(),
            how: how.into(),
            mind: Vec::new(),
            nothing: None,
            way: None,
            beside: Beside::default(),
            worked: None,
        }
    }

    /// A step for which no product is named; says why and whom to ask.
    pub fn refused(name: impl Into<String>, why: impl Into<Cow<'static, str>>) -> Self {
        Self { nothing: Some(why.into()), ..Self::new(name, "") }
    }

    /// A demand.
    pub fn demand(mut self, what: &'static str, test: Test, why: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        self.demands.push(Demand { what, test, why: why.into(), source });
        self
    }

    /// Classes of fluid (or fluids by key).
    pub fn classes(self, right: &[&str], will_do: &[&str], why: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        let words = |words: &[&str]| words.iter().map(|word| Cow::Owned((*word).to_owned())).collect();
        self.demand("kind of fluid", Test::Class { right: words(right), will_do: words(will_do) }, why, source)
    }

    /// Classes from a table of practice: the first is right, the others will do.
    pub fn ranked(self, ranked: &[String], why: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        let words: Vec<&str> = ranked.iter().map(String::as_str).collect();
        let (right, will_do) = words.split_at(words.len().min(1));
        self.classes(right, will_do, why, source)
    }

    /// Classes used in their turn: the first choice is right, the second will do.
    pub fn turn(self, row: &Cleaning, turn: usize) -> Self {
        let right: Vec<&str> = row.first.get(turn).map(String::as_str).into_iter().collect();
        let will_do: Vec<&str> = row.second.get(turn).or(row.second.last()).map(String::as_str).into_iter().collect();
        self.classes(&right, &will_do, row.why.clone(), row.source.as_str())
    }

    /// Materials that must not be harmed by what stays on them.
    pub fn spares(self, materials: &[String]) -> Self {
        self.touches(materials, true)
    }

    /// Materials that must not be harmed by what is soon wiped or rinsed off them.
    pub fn spares_briefly(self, materials: &[String]) -> Self {
        self.touches(materials, false)
    }

    fn touches(self, materials: &[String], stays: bool) -> Self {
        if materials.is_empty() {
            return self;
        }
        self.demand(
            "safe on what it touches",
            Test::Spares { materials: materials.to_vec(), stays },
            "it touches these materials",
            "common-practice",
        )
    }

    /// What is never done there.
    pub fn never(self, bar: &'static Bar) -> Self {
        self.mind(format!("Never {}, for {}.", bar.what, bar.why), bar.source)
    }

    /// An arc, a flame or glowing metal is near, or the part meets it later.
    pub fn near_heat(mut self) -> Self {
        self.beside.heat = true;
        self
    }

    /// Paint or glue goes on it next.
    pub fn before_coating(mut self) -> Self {
        self.beside.coating = true;
        self
    }

    /// In an open tray or bath of this surface, not wiped.
    pub fn in_tray(mut self, surface: Area) -> Self {
        self.way = Some(Way::Tray(surface));
        self
    }

    /// A dose for one form of fluid, where it differs from the others.
    pub fn dose_of(mut self, form: Form, dose: Dose) -> Self {
        self.doses.retain(|(known, _)| *known != form);
        self.doses.push((form, dose));
        self
    }

    /// Something to mind where a condition holds.
    pub fn mind_if(self, holds: bool, text: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        if holds { self.mind(text, source) } else { self }
    }

    /// A dose, whatever the form of the fluid.
    pub fn dose(mut self, dose: Dose) -> Self {
        self.doses.clear();
        for form in [Form::Oil, Form::Grease, Form::Dry, Form::Liquid, Form::Paste, Form::Solid] {
            self.doses.push((form, dose));
        }
        self
    }

    /// What an area takes of these coats, each form of fluid by the best of its classes.
    pub fn covers(self, bench: &Bench<'_>, right: &[&str], will_do: &[&str], area: Area) -> Self {
        let usual = self.dose(right.first().map_or(Dose::ml(0.0), |class| coverage(bench, class, area)));
        // The best come last, for they stand.
        will_do.iter().rev().chain(right.iter().rev()).fold(usual, |step, class| {
            let dose = coverage(bench, class, area);
            let own = bench.reference.fluids_of(class).filter(|fluid| fluid.classes.first().is_some_and(|first| first == class));
            own.fold(step, |step, fluid| step.dose_of(fluid.form, dose))
        })
    }

    /// The stretch of the working that is this step's own.
    pub fn worked(mut self, stretch: std::ops::Range<usize>) -> Self {
        self.worked = Some(stretch);
        self
    }

    /// Something to mind.
    pub fn mind(mut self, text: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        self.mind.push((text.into(), source));
        self
    }
}

/// What an area takes of a coat, by the coverage of its row.
fn coverage(bench: &Bench<'_>, class: &str, area: Area) -> Dose {
    /// Of what has no coverage of its own: as of an oil that is wiped on and off; *common practice*.
    const WIPED_ML_PER_M2: f64 = 20.0;
    match bench.reference.finishes.get(class).and_then(|row| row.coverage_ml_per_m2) {
        Some([low, high]) => {
            Dose { low: low * area.base(), likely: 0.5 * (low + high) * area.base(), high: high * area.base(), ..Dose::ml(0.0) }
        }
        None => Dose::ml(WIPED_ML_PER_M2 * area.base()),
    }
}

/// Degreasing before something that must stick or bite; `residue_free` where even a trace of oil spoils it.
///
/// What cracks under solvent is washed with soap and water.
pub(crate) fn degrease(bench: &Bench<'_>, materials: &[String], area_dose: Dose, residue_free: bool) -> Step {
    let (right, will_do): (&[&str], &[&str]) = if bench.any_is(materials, "plastics") {
        (&["neutral-detergent"], &["isopropanol", "alcohol", "dearomatised-solvent"])
    } else if residue_free {
        (&["acetone", "isopropanol"], &["alcohol", "brake-cleaner", "alkaline-degreaser"])
    } else {
        (
            &["dearomatised-solvent", "isopropanol", "acetone"],
            &["mineral-spirits", "alcohol", "brake-cleaner", "neutral-detergent", "kerosene"],
        )
    };
    Step::new("degrease", "wipe with a wet cloth, then with a clean dry one, one way only")
        .classes(right, will_do, "what follows sticks or bites only on a face without oil", "common-practice")
        .spares(materials)
        .dose(area_dose)
}

/// Coldest place in which an anaerobic or a two-part adhesive still cures, °C; *common practice*.
const CURES_FROM_C: f64 = 5.0;

/// Warmest place for which the times of a cure are known, °C; *common practice*.
const CURES_TO_C: f64 = 40.0;

/// How many times longer a cure takes than at 22 °C.
pub(crate) fn cure_slower(celsius: f64) -> Result<f64, Complaint> {
    let full = |celsius: f64| {
        let at = crate::demand::celsius(celsius.clamp(CURES_FROM_C, CURES_TO_C));
        cure_time(&mut Silent, at, Length::from_base(0.0), [BondMetal::Steel; 2], false).map(|cure| cure.full)
    };
    Ok((full(celsius)? / full(22.0)?).value)
}

/// What decides how long an anaerobic compound cures.
pub(crate) struct Curing<'a> {
    /// Its gap, by diameter.
    pub gap: Length,
    /// The metals it lies between.
    pub metals: [BondMetal; 2],
    /// Whether an activator helps it.
    pub activated: bool,
    /// A compound whose own times differ from those of its family, with its gap counted in them.
    pub own: Option<&'a Bond>,
}

/// How long an anaerobic compound cures in the coldest this room gets, or warmed where that is too cold.
pub(crate) fn cure<R: Recorder>(r: &mut R, step: Step, bench: &Bench<'_>, curing: &Curing<'_>) -> Result<Step, Complaint> {
    /// As warm as cold parts are made at least.
    const WARMED_C: f64 = 20.0;
    let coldest = bench.coldest_celsius();
    let (step, at, where_) =
        if coldest < CURES_FROM_C { (cold(step, bench)?, WARMED_C, "Warmed to") } else { (step, coldest.min(CURES_TO_C), "At") };
    let gap = if curing.own.is_some() { Length::from_base(0.0) } else { curing.gap };
    let times = cure_time(r, crate::demand::celsius(at), gap, curing.metals, curing.activated)?;
    let (handled, full) = match curing.own {
        Some(bond) => {
            let slower = (times.full / cure_time(&mut Silent, crate::demand::celsius(22.0), gap, [BondMetal::Steel; 2], true)?.full).value;
            (about(slower * bond.handle_after), slower * bond.load_after)
        }
        None => (format!("{} to {}", about(times.fixture.low), about(times.fixture.high)), times.full),
    };
    let full = about(full);
    Ok(step.mind(
        format!("{where_} {} it bears handling after {handled} and its load after {full}; leave it alone till then.", bench.degrees(at)),
        "typical-from-memory",
    ))
}

/// A time to two digits: no cure is known better.
fn about(time: Time) -> String {
    let seconds = time.base();
    if seconds <= 0.0 {
        return show(time, System::Metric);
    }
    // Rounded in the unit it is shown in, so that the digits left are those that count.
    let hour = 3600.0;
    let unit = [2.0 * 24.0 * hour, hour, 60.0, 1.0].into_iter().find(|from| seconds >= *from).unwrap_or(1.0);
    let unit = if unit > hour { 24.0 * hour } else { unit };
    let scale = 10_f64.powf(1.0 - (seconds / unit).log10().floor());
    show(Time::from_base((seconds / unit * scale).round() / scale * unit), System::Metric)
}

/// What a cold room does to a cure.
pub(crate) fn cures(step: Step, bench: &Bench<'_>) -> Result<Step, Complaint> {
    let coldest = bench.coldest_celsius();
    if coldest < CURES_FROM_C {
        return cold(step, bench);
    }
    let slower = cure_slower(coldest)?;
    Ok(step.mind_if(
        slower > 1.5,
        format!(
            "At {} the cure takes about {slower:.1} times as long as the data sheet says for {}.",
            bench.degrees(coldest),
            bench.degrees(22.0)
        ),
        "common-practice",
    ))
}

/// What to mind in a room too cold for a cure.
fn cold(step: Step, bench: &Bench<'_>) -> Result<Step, Complaint> {
    let least = bench.degrees(CURES_FROM_C);
    Ok(step.mind(
        format!(
            "Your room goes down to {}. Below {least} it does not cure: warm the parts to between {} and {} and keep them there. At {least} it \
             takes about {:.0} times as long as the data sheet says for {}.",
            bench.degrees(bench.coldest_celsius()),
            bench.degrees(20.0),
            bench.degrees(CURES_TO_C),
            cure_slower(CURES_FROM_C)?,
            bench.degrees(22.0)
        ),
        "common-practice",
    ))
}

/// A coat against rust after water or acid.
pub(crate) fn oil_after(materials: &[String], dose: Dose) -> Step {
    Step::new("oil", "within minutes of drying, wipe or dip, let it drain")
        .classes(
            &["water-displacing-film", "rust-oil"],
            &["preservative-oil", "water-displacing-spray", "light-machine-oil", "soft-wax", "paste-wax"],
            "a clean, wet face rusts while you look at it",
            "common-practice",
        )
        .spares(materials)
        .dose(dose)
}

/// The needs of a task, one for each step.
pub(super) fn finish(bench: &Bench<'_>, task: Task, working: Option<&Notebook>) -> Vec<Need> {
    let weight = weight::weight(task.consequence, task.times_a_year, bench.job.priority, bench.reference);
    let group = task.steps.first().map(|step| id(&[&bench.job.name, &step.name])).unwrap_or_default();
    let every = Every {
        running_hours: None,
        days: None,
        at_latest: None,
        by_calendar: false,
        with: Some(crate::need::With::Job),
        times_a_year: task.times_a_year,
    };
    let share = 1.0 / count(task.steps.iter().filter(|step| step.nothing.is_none()).count().max(1));
    task.steps
        .into_iter()
        .map(|step| {
            let nothing = step.nothing.is_some();
            let mut demands = step.demands;
            if !nothing {
                demands.push(beside(bench, step.beside, &demands));
                demands.push(safe_air(bench.room, &step.doses, step.way));
                demands.extend(odour(bench.room));
            }
            Need {
                id: id(&[&bench.job.name, &step.name]),
                task: group.clone(),
                share: if nothing { 0.0 } else { share },
                place: Place::Step { job: bench.job.name.clone(), step: step.name },
                kind: bench.job.kind.name,
                weight: weight.clone(),
                demands,
                nothing: step.nothing,
                rations: step.doses.into_iter().map(|(form, dose)| Ration { form, dose, every: every.clone() }).collect(),
                how: How::Words(step.how),
                mind: step.mind,
                working: working.map(|notebook| step.worked.map_or_else(|| notebook.clone(), |stretch| notebook.between(stretch))),
                at: bench.job.at.clone(),
            }
        })
        .collect()
}

/// What is spent into the air of the room.
fn safe_air(room: &Room, doses: &[(Form, Dose)], way: Option<Way>) -> Demand {
    Demand {
        what: "safe in this air",
        test: Test::SafeAir(Spent { room: room_air(room), doses: doses.to_vec(), way }),
        why: "vapour that you breathe numbs and poisons, and vapour near a flame burns".into(),
        source: "acgih-ventilation",
    }
}

/// What is beside the step: what its job says, a flame in the room, and what it touches.
fn beside(bench: &Bench<'_>, said: Beside, demands: &[Demand]) -> Demand {
    let touched = |groups: &[&str]| {
        demands.iter().any(|demand| match &demand.test {
            Test::Spares { materials, .. } => groups.iter().any(|group| bench.any_is(materials, group)),
            _ => false,
        })
    };
    let facts = Beside {
        heat: said.heat || bench.room.flames,
        light_metal: touched(&["light-metals", "zinc-plate"]),
        hard_steel: touched(&["hardened-steels"]),
        ..said
    };
    Demand {
        what: "safe beside this job",
        test: Test::Beside(facts),
        why: "some fluids turn to poison or fire near heat, oxygen or the wrong metal".into(),
        source: "common-practice",
    }
}

/// Where smells are unwelcome, strong ones are wrong.
fn odour(room: &Room) -> Option<Demand> {
    room.low_odour.then(|| Demand {
        what: "little smell",
        test: Test::Without { traits: &[Trait::StrongOdour], else_grade: Grade::Wrong },
        why: "strong smells are unwelcome in this room".into(),
        source: "shop-file",
    })
}
