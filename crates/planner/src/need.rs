//! What one point or one step asks of whatever is put there.

use std::borrow::Cow;

use formulas::working::Notebook;
use reference::{Fluid, Form};
use schemars::JsonSchema;
use serde::Serialize;
use shop::Span;
use units::{Amount, Mass, Quantity, Range, Volume};

use crate::demand::Demand;

/// What one point or one step of a job asks for.
#[derive(Debug, Clone)]
pub struct Need {
    /// Stable short name: machine and point, or job and step, in lower case with dashes.
    pub id: String,
    /// The task it belongs to: needs of one task count only when all of them are served.
    pub task: String,
    /// Its share of the task's weight.
    pub share: f64,
    /// Where it arises.
    pub place: Place,
    /// The kind's word.
    pub kind: &'static str,
    /// What it is worth to have it served.
    pub weight: Weight,
    /// The demands, in the order they are shown.
    pub demands: Vec<Demand>,
    /// Set when nothing is to be put there; says why.
    pub nothing: Option<Cow<'static, str>>,
    /// How much and how often, for each form of fluid it takes; the first is the usual one.
    pub rations: Vec<Ration>,
    /// How it is put there.
    pub how: How,
    /// What to mind there.
    pub mind: Vec<(Cow<'static, str>, &'static str)>,
    /// The working of its numbers, where it was asked for.
    pub working: Option<Notebook>,
    /// Where its point or job stands in the shop file.
    pub at: Span,
}

/// Where a need arises.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// A point of a machine.
    Point {
        /// The machine's name.
        machine: String,
        /// The point's name.
        point: String,
    },
    /// A step of a job.
    Step {
        /// The job's name.
        job: String,
        /// The step's name.
        step: String,
    },
}

impl Place {
    /// In words: `bench lathe · bed ways`.
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::Point { machine, point } => format!("{machine} · {point}"),
            Self::Step { job, step } => format!("{job} · {step}"),
        }
    }
}

/// What a need is worth: consequence × frequency × the user's priority.
#[derive(Debug, Clone, PartialEq)]
pub struct Weight {
    /// Key of the consequence of leaving it without.
    pub consequence: Consequence,
    /// The consequence's number.
    pub consequence_weight: f64,
    /// Times a year it matters.
    pub times_a_year: f64,
    /// The frequency's number.
    pub frequency_weight: f64,
    /// The user's factor.
    pub priority: f64,
}

impl Weight {
    /// The product.
    #[must_use]
    pub fn value(&self) -> f64 {
        self.consequence_weight * self.frequency_weight * self.priority
    }
}

/// What happens when a need is left unserved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Consequence {
    /// Stops the work or harms the machine.
    StopsOrHarms,
    /// Spoils the work.
    Spoils,
    /// Makes it slow or dirty.
    SlowsOrDirties,
    /// Shows only in the looks.
    Looks,
}

impl Consequence {
    /// The key of its row in the data.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::StopsOrHarms => "stops-or-harms",
            Self::Spoils => "spoils",
            Self::SlowsOrDirties => "slows-or-dirties",
            Self::Looks => "looks",
        }
    }
}

/// How much of one form of fluid is put there, and how often.
#[derive(Debug, Clone, PartialEq)]
pub struct Ration {
    /// The form of fluid.
    pub form: Form,
    /// How much at a time.
    pub dose: Dose,
    /// How often.
    pub every: Every,
}

/// How much is put there at a time, between an honest low and high.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Dose {
    /// Least that serves.
    pub low: f64,
    /// The usual amount.
    pub likely: f64,
    /// Most before it is waste.
    pub high: f64,
    /// `mL`, `g`, `m` or `pieces`.
    pub unit: DoseUnit,
}

/// The unit of a dose.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub enum DoseUnit {
    /// Millilitres.
    #[serde(rename = "mL")]
    Millilitre,
    /// Grams.
    #[serde(rename = "g")]
    Gram,
    /// Metres, for tape.
    #[serde(rename = "m")]
    Metre,
    /// Pieces.
    #[serde(rename = "pieces")]
    Piece,
}

const CUBIC_METRES_PER_ML: f64 = 1e-6;
const KILOGRAMS_PER_GRAM: f64 = 1e-3;

impl Dose {
    /// A dose by volume, from half to twice the likely amount unless the ends are known better.
    #[must_use]
    pub fn volume(likely: Volume) -> Self {
        Self::about(likely.base() / CUBIC_METRES_PER_ML, DoseUnit::Millilitre)
    }

    /// A dose by volume with known ends.
    #[must_use]
    pub fn volumes(range: Range<Volume>) -> Self {
        let ml = |volume: Volume| volume.base() / CUBIC_METRES_PER_ML;
        Self { low: ml(range.low), likely: ml(range.likely), high: ml(range.high), unit: DoseUnit::Millilitre }
    }

    /// A dose by mass, from half to twice the likely amount.
    #[must_use]
    pub fn mass(likely: Mass) -> Self {
        Self::about(likely.base() / KILOGRAMS_PER_GRAM, DoseUnit::Gram)
    }

    /// A filling to a mark, which is as large as it is.
    #[must_use]
    pub fn filling(volume: Volume) -> Self {
        Self::volumes(Range { low: volume, likely: volume, high: volume })
    }

    /// A dose in millilitres, from half to twice.
    #[must_use]
    pub const fn ml(likely: f64) -> Self {
        Self::about(likely, DoseUnit::Millilitre)
    }

    /// A dose in grams, from half to twice.
    #[must_use]
    pub const fn grams(likely: f64) -> Self {
        Self::about(likely, DoseUnit::Gram)
    }

    /// A dose whose ends are half and twice its likely amount, as trade doses scatter; *common practice*.
    #[must_use]
    pub const fn about(likely: f64, unit: DoseUnit) -> Self {
        Self { low: 0.5 * likely, likely, high: 2.0 * likely, unit }
    }

    /// The dose for several like it.
    #[must_use]
    pub fn times(self, count: f64) -> Self {
        Self { low: self.low * count, likely: self.likely * count, high: self.high * count, unit: self.unit }
    }

    /// Two doses of one unit together.
    #[must_use]
    pub(crate) fn plus(self, other: Self) -> Self {
        Self { low: self.low + other.low, likely: self.likely + other.likely, high: self.high + other.high, unit: self.unit }
    }

    /// The dose of a fluid as it is sold: of a wax, a paste or a powder by weight, where its packs are.
    #[must_use]
    pub(crate) fn as_sold(self, fluid: &Fluid) -> Self {
        let stays = matches!(fluid.form, Form::Dry | Form::Paste | Form::Solid);
        let weighed = fluid.packs.iter().all(|pack| matches!(pack.size, Amount::Mass(_)));
        if !(self.unit == DoseUnit::Millilitre && stays && weighed) {
            return self;
        }
        let grams_per_ml = fluid.density.value.base() * CUBIC_METRES_PER_ML / KILOGRAMS_PER_GRAM;
        Self { unit: DoseUnit::Gram, ..self.times(grams_per_ml) }
    }

    /// The likely amount.
    #[must_use]
    pub fn amount(&self) -> Amount {
        match self.unit {
            DoseUnit::Millilitre => Amount::Volume(Volume::from_base(self.likely * CUBIC_METRES_PER_ML)),
            DoseUnit::Gram => Amount::Mass(Mass::from_base(self.likely * KILOGRAMS_PER_GRAM)),
            DoseUnit::Metre => Amount::Length(units::Length::from_base(self.likely)),
            DoseUnit::Piece => Amount::Pieces(self.likely),
        }
    }
}

/// How often a dose is given.
#[derive(Debug, Clone, PartialEq)]
pub struct Every {
    /// After so many hours of running.
    pub running_hours: Option<f64>,
    /// After so many days, the way the shop uses it: by running hours, by taking it into use or by the calendar, whichever comes first.
    pub days: Option<f64>,
    /// After so many days however little it runs.
    pub at_latest: Option<f64>,
    /// Whether the calendar comes so long before the running hours that it alone is worth saying.
    pub by_calendar: bool,
    /// With what it comes round, beside hours and days or instead of them.
    pub with: Option<With>,
    /// Doses a year that follow from it.
    pub times_a_year: f64,
}

/// What a dose comes round with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub enum With {
    /// The machine is taken into use.
    #[serde(rename = "before use")]
    Use,
    /// The job is done.
    #[serde(rename = "each time")]
    Job,
}

impl With {
    /// In words: `before use`.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Use => "before use",
            Self::Job => "each time",
        }
    }
}

/// How a fluid gets to its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum How {
    /// A lubrication point: by its fitting.
    Fitting(shop::Fitting),
    /// A step of a job: in these words.
    Words(Cow<'static, str>),
}

impl How {
    /// In words, for a fluid of this form.
    #[must_use]
    pub fn words(&self, form: Form) -> Cow<'static, str> {
        use shop::Fitting as F;
        let fitting = match self {
            Self::Words(words) => return words.clone(),
            Self::Fitting(fitting) => *fitting,
        };
        Cow::Borrowed(match (fitting, form) {
            (F::BallOiler | F::OilCup | F::OilHole, Form::Dry) => "spray or puff it in, and move the part",
            (F::BallOiler, _) => "press the can's spout on the ball, one stroke",
            (F::OilCup, _) => "fill the cup",
            (F::OilHole, _) => "drops into the hole, then plug it",
            (F::Wick, _) => "fill the well, see that the wick is wet",
            (F::GreaseNipple, _) => "wipe the nipple, one stroke of the gun",
            (F::Bath | F::Splash, _) => "fill to the mark at rest",
            (F::Drip, _) => "set the drip while it runs, shut it at rest",
            (F::Pump, _) => "one pull of the pump",
            (F::Cap, _) => "pack the cap, and screw it down a quarter turn at a time",
            (F::Packed, _) => "take it apart, wash it out, pack it by hand a third full",
            (F::Sealed, _) => "leave it",
            (F::Brush, Form::Grease | Form::Paste) => "wipe clean, brush on thin",
            (F::Brush, Form::Dry) => "wipe clean, put on thin, let a spray dry",
            (F::Brush, _) => "wipe clean, oil from can or brush, spread",
        })
    }
}

impl Need {
    /// The reason to read first: that of the kind of fluid asked for.
    #[must_use]
    pub fn leading_reason(&self) -> String {
        let leading = self.demands.iter().find(|demand| matches!(demand.test, crate::demand::Test::Class { .. })).or(self.demands.first());
        leading.map(|demand| demand.why.to_string()).unwrap_or_default()
    }

    /// How much and how often of a fluid of this form, where the place takes one.
    #[must_use]
    pub fn ration(&self, form: Form) -> Option<&Ration> {
        self.rations.iter().find(|ration| ration.form == form)
    }
}
